import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { type PlanJob, type PlanNews, PlanWork } from "../../src/plan/plan-work.ts";
import { scorePlan } from "../../src/plan/score.ts";
import { beginSearch } from "../../src/plan/search/search.ts";
import { smallProblem, waitFor } from "./small-problem.ts";

/**
 * Two pieces of two coats, 30 min each, the second to begin 60 to 100 min after the first, else 20 min of scuffing a
 * day later; and 60 min of carving on a third. The bench is open for 180 min a day.
 */
const problem = smallProblem(
  [
    { piece: 0, minutes: 30 },
    {
      piece: 0,
      minutes: 30,
      waits: [
        waitFor(0, [
          [60, 100],
          [1380, null, 20],
        ]),
      ],
    },
    { piece: 1, minutes: 30 },
    {
      piece: 1,
      minutes: 30,
      waits: [
        waitFor(2, [
          [60, 100],
          [1380, null, 20],
        ]),
      ],
    },
    { piece: 2, minutes: 60 },
  ],
  [{}, {}, {}],
);

const job: PlanJob = {
  id: 7,
  seq: 12,
  problem,
  warm: null,
  kept: false,
  seed: 1,
  rounds: 300,
  leaves: [
    { tasks: [0], until: 180 },
    { tasks: [4], until: 180 },
  ],
};

/** Everything that is told of a job, when it may always be told or only at the end. */
function tell(asked: PlanJob, mayTell = true): PlanNews[] {
  const work = new PlanWork(asked);
  const told: PlanNews[] = [];
  for (let steps = 0; !work.ended; steps++) {
    if (steps > 10_000) throw new Error("the work does not end");
    const news = work.step(mayTell);
    if (news !== null) told.push(news);
  }
  return told;
}

const best = (): Plan => {
  const search = beginSearch(problem, { seed: 1, warm: null });
  search.go(2000);
  return search.found.plan;
};

describe("the work on a job", () => {
  test("tells a plan first, then what leaving costs, and at the end that nothing more comes", () => {
    const told = tell(job);
    expect(told[0]?.plan).not.toBeNull();
    expect(told[0]?.without).toBeNull();
    expect(told[1]).toMatchObject({ plan: null, without: [expect.anything(), expect.anything()] });
    expect(told.map(({ done }) => done)).toEqual([...told.slice(1).map(() => false), true]);
    for (const news of told) expect(news).toMatchObject({ id: 7, seq: 12 });
  });

  test("tells only plans that the checker lets pass, each better by a hundredth than the one before", () => {
    const plans = tell(job).flatMap(({ plan }) => plan ?? []);
    const totals = plans.map((plan) => scorePlan(problem, plan).total);
    for (const plan of plans) expect(checkPlan(problem, plan)).toEqual([]);
    for (const [index, total] of totals.slice(1).entries()) {
      expect(total).toBeLessThanOrEqual((totals[index] ?? 0) * 0.99);
    }
  });

  test("is the same again, and ends with the same plan whether or not it was told on the way", () => {
    expect(tell(job)).toEqual(tell(job));
    const last = (told: readonly PlanNews[]) => told.findLast(({ plan }) => plan !== null)?.plan?.finish;
    const often = last(tell(job));
    const seldom = last(tell(job, false));
    const cost = (finish: Plan["finish"] | undefined) =>
      (finish ?? []).reduce<number>((sum, at) => sum + (at ?? 0), 0);
    // Told seldom, it may pass over a plan that was better by less than a hundredth.
    expect(Math.abs(cost(often) - cost(seldom))).toBeLessThanOrEqual(0.011 * cost(often));
  });

  test("spends no more rounds than it was given", () => {
    for (const rounds of [0, 1, 59, 65, 300]) {
      expect(tell({ ...job, rounds }).at(-1)?.rounds).toBeLessThanOrEqual(rounds);
    }
  });
});

describe("a plan that is kept already", () => {
  test("is not told again unless something better by a hundredth was found", () => {
    const told = tell({ ...job, warm: best(), kept: true, rounds: 0 });
    expect(told.map(({ plan }) => plan)).toEqual(told.map(() => null));
    expect(told).toMatchObject([
      { done: false, without: [expect.anything(), expect.anything()] },
      { done: true, without: [expect.anything(), expect.anything()] },
    ]);
  });

  test("of an older shop is no more than a seed: what it becomes is told", () => {
    const told = tell({ ...job, warm: best(), kept: false, rounds: 0 });
    expect(told[0]?.plan).not.toBeNull();
  });
});

test("leaving the first coat for the day costs its piece a day, and carving only the hours", () => {
  const told = tell(job);
  const news = told.findLast(({ without }) => without !== null);
  const [coat, carving] = news?.without ?? [];
  // Left until 180 the bench is shut: its day begins at 1440, its second coat 60 min after the 30 of the first.
  expect(told.findLast(({ plan }) => plan !== null)?.plan?.finish[0]).toBeLessThanOrEqual(180);
  expect(coat?.finish[0]).toBeGreaterThanOrEqual(1440 + 30 + 60 + 30);
  expect(carving?.finish[2]).toBeGreaterThanOrEqual(1440 + 60);
  expect(carving?.amends).toBe(0);
});

test("the plan of an empty shop is told once: one that costs nothing is never bettered", () => {
  const told = tell({ ...job, problem: smallProblem([], []), leaves: [] });
  expect(told.filter(({ plan }) => plan !== null)).toHaveLength(1);
  expect(told.at(-1)).toMatchObject({ plan: null, gap: 0, done: true });
});

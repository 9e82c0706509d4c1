import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import type { NowAnswer } from "../../src/plan/now-answer.ts";
import { nowByRow, planOfRow } from "../../src/plan/now-by-row.ts";
import { warmPlan } from "../../src/plan/plan-row.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { scorePlan } from "../../src/plan/score.ts";
import { playing } from "../../src/plan/search/play-on.ts";
import { asPlanned, playByRank } from "../../src/plan/search/simple-orders.ts";
import { whatNow } from "../../src/plan/what-now.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { Bench, told } from "../acts/bench.ts";
import { anyRequests, askedAt } from "../acts/random-requests.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { contextAt, newPieceOf } from "./ask-now.ts";
import { keepPlan } from "./kept-plan.ts";

/** Each tag with each step that can be worked or is held. */
function open({ work, held }: NowAnswer): string[] {
  return [...work, ...held].flatMap(({ tags, step }) => tags.map((tag) => `${tag} ${step}`)).sort();
}

describe("now by the plan kept, whatever was done before", () => {
  test("names the same work as dispatch does, in an order of its own, and is the same when asked again", () => {
    fc.assert(
      fc.property(anyRequests, fc.nat(240), (requests, later) => {
        const bench = new Bench("Mon 18:00", walker);
        bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
        for (const timeless of requests) {
          bench.clock += Math.abs(timeless.wait) * MINUTE;
          bench.ask(askedAt(timeless, bench.clock));
        }
        const context = { ...bench.context, newPiece: null };
        const row = keepPlan(bench.shop, context);
        const then = { ...context, now: context.now + later * MINUTE };
        const answer = nowByRow(bench.shop, then, row);
        expect(answer).toMatchObject({ basis: "plan", plan: { is: "kept" } });
        expect(open(answer)).toEqual(open(whatNow(bench.shop, then)));
        expect(nowByRow(bench.shop, then, row)).toEqual(answer);
      }),
      { numRuns: 25 },
    );
  });

  test("has no row of work that a take would refuse, its cautions once read", () => {
    let rows = 0;
    fc.assert(
      fc.property(anyRequests, (requests) => {
        const bench = new Bench("Mon 18:00", walker);
        bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
        for (const timeless of requests) {
          bench.clock += Math.abs(timeless.wait) * MINUTE;
          bench.ask(askedAt(timeless, bench.clock));
          const context = { ...bench.context, newPiece: null };
          const { work } = nowByRow(bench.shop, context, keepPlan(bench.shop, context, 10));
          for (const { tags, step, colour } of work) {
            const length = bench.events.length;
            expect(told(bench.take(tags, { step, colour })).join()).not.toContain("no:");
            bench.events.splice(length);
            rows += 1;
          }
        }
      }),
      { numRuns: 10 },
    );
    expect(rows).toBeGreaterThan(30);
  });

  test("is by a plan that the checker lets pass, and that costs no more than dispatching in its order", () => {
    fc.assert(
      fc.property(anyRequests, fc.nat(240), (requests, later) => {
        const bench = new Bench("Mon 18:00", walker);
        bench.tag(4);
        for (const timeless of requests) {
          bench.clock += Math.abs(timeless.wait) * MINUTE;
          bench.ask(askedAt(timeless, bench.clock));
        }
        const context = { ...bench.context, newPiece: newPieceOf(walker) };
        const row = keepPlan(bench.shop, context);
        const facts = readShop(bench.shop, { ...context, now: context.now + later * MINUTE });
        const found = planOfRow(row, bench.shop.newest, facts);
        if (found === null) throw new Error("the row does not hold");
        const { problem } = found.made;
        expect(checkPlan(problem, found.plan)).toEqual([]);
        const rank = asPlanned(warmPlan(row, found.made));
        const plain = playByRank(rank, ...playing(problem), Number.POSITIVE_INFINITY);
        expect(scorePlan(problem, found.plan).total).toBeLessThanOrEqual(plain);
      }),
      { numRuns: 15 },
    );
  });
});

describe("a row that no longer holds", () => {
  const diary = new Diary(walker);
  for (const tag of [1, 2]) diary.came(tag, "last clear", "last Sun 9:00", "Mon 18:00");
  const context = contextAt("Mon 18:00");
  const row = keepPlan(diary.shop(), context);

  test("since an act was done leaves dispatch's answer, and says that it is older", () => {
    diary.take(1, "hangers", "Mon 18:05");
    const answer = nowByRow(diary.shop(), contextAt("Mon 18:05"), row);
    const { plan, ...told } = answer;
    const { plan: none, ...dispatched } = whatNow(diary.shop(), contextAt("Mon 18:05"));
    expect([plan, none]).toEqual([
      { is: "older", gap: null },
      { is: "none", gap: null },
    ]);
    expect(told).toEqual(dispatched);
  });

  test("since the settings changed without an act does so too", () => {
    const other = { ...context, hours: { weekly: [], days: {}, away: [] } };
    expect(nowByRow(diary.shop(), other, { ...row, seq: diary.shop().newest })).toMatchObject({
      basis: "dispatch",
      plan: { is: "unfit" },
    });
  });
});

test("leaving is told by planning without it: of two to be tested tonight, the one left waits for tomorrow", () => {
  const diary = new Diary(walker);
  for (const tag of [1, 2]) diary.came(tag, "hangers", "Mon 17:00", "Mon 17:30");
  // 10 min each, from 18:00: 18:10 and 18:20. Left till 21:00, the next evening begins at 18:00.
  const answer = nowByRow(
    diary.shop(),
    contextAt("Mon 18:00"),
    keepPlan(diary.shop(), contextAt("Mon 18:00")),
  );
  const [first, second] = answer.work.map(({ tags, ifLeft }) => ({ tags, ...ifLeft }));
  expect(first).toMatchObject({ finishNow: at("Mon 18:10"), finishLeft: at("Tue 18:10") });
  expect(second).toMatchObject({ finishNow: at("Mon 18:20"), finishLeft: at("Tue 18:10") });
  // The other gains its ten minutes.
  expect(first?.others).toEqual({ amends: 0, broken: [], delay: -10, later: [] });
});

test("of a plan kept without what leaving brings no finish is told: dispatch's would be set against another plan", () => {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 17:30");
  diary.came(2, "hangers", "Mon 17:00", "Mon 17:30");
  const context = contextAt("Mon 18:00");
  const row = { ...keepPlan(diary.shop(), context), leaving: { until: 0, work: [] } };
  const answer = nowByRow(diary.shop(), context, row);
  expect(answer).toMatchObject({ basis: "plan" });
  expect(answer.work.map(({ ifLeft }) => [ifLeft.finishNow, ifLeft.finishLeft])).toEqual([
    [null, null],
    [null, null],
  ]);
  // What a window that shuts tonight costs is known without any plan.
  const sealing = answer.work.find(({ tags }) => tags.includes(1));
  expect(sealing?.ifLeft.preparation?.do).toBe("scuff");
});

test("what leaving brings is set against the plan as it is played on: an hour later it is the hour later", () => {
  const diary = new Diary(walker);
  diary.came(1, "hangers", "Mon 17:00", "Mon 17:30");
  const row = keepPlan(diary.shop(), contextAt("Mon 18:00"));
  // The test takes 10 min: begun at 19:00 it is done at 19:10, left till 21:00 the next evening at 18:10.
  expect(nowByRow(diary.shop(), contextAt("Mon 19:00"), row).work[0]?.ifLeft).toMatchObject({
    finishNow: at("Mon 19:10"),
    finishLeft: at("Tue 18:10"),
    others: { amends: 0, broken: [], delay: 0, later: [] },
  });
});

test("a promise that leaving breaks is told, and only that one", () => {
  const diary = new Diary(walker);
  for (const tag of [1, 2]) diary.came(tag, "hangers", "Mon 17:00", "Mon 17:30");
  // Due today: by the end of the day. Left, it is finished tomorrow.
  diary.say(1, { kind: "changed", due: "2026-03-23" }, "Mon 17:30");
  diary.say(2, { kind: "changed", due: "2026-03-24" }, "Mon 17:30");
  const answer = nowByRow(
    diary.shop(),
    contextAt("Mon 18:00"),
    keepPlan(diary.shop(), contextAt("Mon 18:00")),
  );
  const broken = answer.work.map(({ tags, ifLeft }) => [tags, ifLeft.others?.broken]);
  expect(broken).toEqual([
    [[1], [1]],
    [[2], []],
  ]);
});

test("an aim for one more out is among the work by plan too, with what leaving it does to nobody's promise", () => {
  const diary = new Diary(walker);
  diary.came(1, "hangers", "Mon 17:00", "Mon 17:30");
  const aim = { of: "aim", from: "2026-03-23", finishedPerWeek: null, out: 2 } as const;
  diary.settle(aim, "Mon 17:30");
  const context = contextAt("Mon 18:00", { newPiece: newPieceOf(walker) });
  const answer = nowByRow(diary.shop(), context, keepPlan(diary.shop(), context));
  expect(answer.work.map(({ tags, step }) => [tags, step])).toContainEqual([[], "shape"]);
  const fresh = answer.work.find(({ tags }) => tags.length === 0);
  expect(fresh).toMatchObject({ why: { because: "aim" }, ifLeft: { others: { broken: [] } } });
  // With the aim met nothing more is offered.
  diary.tag(2, "Mon 17:45");
  const met = nowByRow(diary.shop(), context, keepPlan(diary.shop(), context));
  expect(met.work.filter(({ tags }) => tags.length === 0)).toEqual([]);
});

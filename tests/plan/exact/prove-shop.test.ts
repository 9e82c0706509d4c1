import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { beginProof } from "../../../src/plan/exact/prove-shop.ts";
import type { Problem, Task } from "../../../src/plan/problem.ts";
import { scorePlan } from "../../../src/plan/score.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { randomProblem } from "../random-problem.ts";
import { enumerateCost } from "./enumerate-plans.ts";

const NEVER_STOP = () => false;

/** What a plan that leaves everything undone would cost, and more. */
const DEAR = 100_000;

const kinds = ["plain", "white", "red", "melt", "mix"] as const;

/** Shops of three tasks in two short sessions, small enough that every plan can be tried. */
const tinyShop: fc.Arbitrary<Problem> = fc
  .record({
    tasks: fc.array(
      fc.record({
        minutes: fc.integer({ min: 1, max: 3 }),
        kind: fc.constantFrom(...kinds),
        dusty: fc.boolean(),
        wet: fc.boolean(),
        joined: fc.boolean(),
        opens: fc.nat(5),
        unfit: fc.option(fc.tuple(fc.nat(9), fc.integer({ min: 1, max: 4 })), { nil: null }),
        spare: fc.option(fc.nat(3), { nil: null }),
      }),
      { minLength: 2, maxLength: 3 },
    ),
    due: fc.option(fc.integer({ min: 2, max: 12 }), { nil: null }),
    standing: fc.constantFrom("any" as const, null),
    mostOut: fc.constantFrom(null, 1),
    setUp: fc.nat(2),
  })
  .map((given): Problem => {
    const tasks: Task[] = [];
    let piece = 0;
    for (const [index, each] of given.tasks.entries()) {
      const joins = index > 0 && each.joined;
      if (index > 0 && !joins) piece++;
      const shuts = each.spare === null ? null : each.opens + each.spare;
      const windows = [{ opens: each.opens, shuts, preparation: null }];
      const setUp = kinds.indexOf(each.kind) - 1;
      tasks.push({
        piece,
        minutes: each.minutes,
        station: setUp < 0 ? null : ([0, 0, 1, 2][setUp] ?? 0),
        setUp: setUp < 0 ? null : setUp,
        release: 0,
        waits: joins ? [{ on: index - 1, windows, mend: null }] : [],
        ...(each.unfit === null ? {} : { unfit: [[each.unfit[0], each.unfit[0] + each.unfit[1]]] }),
        mayStop: false,
        hook: null,
        gives: [
          ...(each.dusty ? [{ what: 0, lasts: 0, fromSetUp: true }] : []),
          ...(each.wet ? [{ what: 1, lasts: 2, fromSetUp: false }] : []),
        ],
        looks: [],
        running: false,
        ended: null,
      });
    }
    const pieces = Array.from({ length: piece + 1 }, (_, number) => ({
      release: number,
      due: given.due,
      weight: 1 + number,
      cure: 1,
      begun: false,
      underLimit: true,
      hook: null,
    }));
    return {
      origin: 0,
      horizon: 14,
      sessions: [
        { opens: 0, closes: 6 },
        { opens: 8, closes: 14 },
      ],
      hands: 1,
      stations: ["booth", "pot", "cup"].map((name, index) => ({
        name,
        standing: index === 0 ? given.standing : null,
      })),
      setUps: [
        { station: 0, minutes: 1, keeps: { way: "load" }, putAway: 0, gives: [] },
        { station: 0, minutes: 2, keeps: { way: "load" }, putAway: 0, gives: [] },
        { station: 1, minutes: 2, keeps: { way: "heat", minutes: 3 }, putAway: 0, gives: [] },
        {
          station: 2,
          minutes: 1,
          keeps: { way: "mix", minutes: 6, serves: Number.POSITIVE_INFINITY },
          putAway: 0,
          gives: [],
        },
      ],
      places: [],
      apart: [[0, 1]],
      air: [],
      looks: [],
      mostOut: given.mostOut,
      prices: { late: 10, flow: 1, amends: 5, setUp: given.setUp },
      pieces,
      tasks,
    };
  });

describe("the proof of a shop's best plan", () => {
  test("costs what the cheapest of all plans costs, and passes the checker", () => {
    let planned = 0;
    fc.assert(
      fc.property(tinyShop, (problem) => {
        const cost = enumerateCost(problem);
        const proof = beginProof(problem, new Map(), DEAR);
        proof?.go(NEVER_STOP);
        const plan = proof?.plan ?? null;
        expect(plan === null ? null : scorePlan(problem, plan).total).toBe(cost);
        if (plan === null || proof === null) return;
        planned++;
        expect(checkPlan(problem, plan)).toEqual([]);
        expect(proof.isOver).toBe(true);
      }),
      { numRuns: 50 },
    );
    expect(planned).toBeGreaterThan(25);
  });

  test("looks only for plans cheaper than one known, and proves that one when there are none", () => {
    fc.assert(
      fc.property(tinyShop, fc.nat(30), (problem, gap) => {
        const best = beginProof(problem, new Map(), DEAR);
        best?.go(NEVER_STOP);
        const cost = best?.isOver ? best.bound : null;
        if (cost === null || cost === DEAR) return;
        const proof = beginProof(problem, new Map(), DEAR);
        proof?.go((nodes) => nodes >= 3);
        expect(proof?.bound).toBeLessThanOrEqual(cost);
        // Told of a plan that dear, it finds the cheapest unless that is the one, and never more than it costs.
        proof?.know(cost + gap);
        proof?.go(NEVER_STOP);
        expect(proof?.isOver).toBe(true);
        expect(proof?.bound).toBe(cost);
      }),
      { numRuns: 100 },
    );
  });

  test("plans some pieces again around visits that stay", () => {
    fc.assert(
      fc.property(tinyShop, (problem) => {
        const whole = beginProof(problem, new Map(), DEAR);
        whole?.go(NEVER_STOP);
        const plan = whole?.plan;
        if (!plan) return;
        const kept = new Map(
          plan.visits.filter((_, place) => place % 2 === 0).map((visit) => [visit.task, visit]),
        );
        const part = beginProof(problem, kept, DEAR);
        part?.go(NEVER_STOP);
        // What stays is of a best plan, so around it the best can be had again.
        const again = part?.plan ?? plan;
        expect(scorePlan(problem, again)).toHaveProperty("total", scorePlan(problem, plan).total);
        expect(again.visits).toEqual(expect.arrayContaining([...kept.values()]));
        expect(checkPlan(problem, again)).toEqual([]);
        expect(part?.bound).toBe(0);
      }),
      { numRuns: 100 },
    );
  });

  test("bounds what the search finds in any shop of which it says all, work in hand included", () => {
    fc.assert(
      fc.property(randomProblem, (shop) => {
        const problem = plain(shop);
        const proof = beginProof(problem, new Map(), DEAR * 100);
        proof?.go((nodes) => nodes >= 200);
        const search = beginSearch(problem, { seed: 1, warm: null });
        search.go(20);
        expect(proof?.bound ?? 0).toBeLessThanOrEqual(search.found.score.total);
      }),
      { numRuns: 60 },
    );
  });
});

/** The same shop without what the model leaves out. */
function plain(problem: Problem): Problem {
  return {
    ...problem,
    hands: 1,
    stations: problem.stations.map((station) => ({ ...station, standing: null })),
    setUps: problem.setUps.map((setUp) => ({ ...setUp, putAway: 0 })),
    looks: [],
    tasks: problem.tasks.map((task) => ({
      ...task,
      mayStop: false,
      looks: [],
      waits: task.waits.map(({ on, windows }) => ({
        on,
        windows: [{ opens: windows[0]?.opens ?? 0, shuts: null, preparation: null }],
        mend: null,
      })),
    })),
  };
}

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/plan.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { Recreate } from "../../../src/plan/search/recreate.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { asPlanned, playByRank, simpleRanks } from "../../../src/plan/search/simple-orders.ts";
import { randomProblem } from "../random-problem.ts";
import { smallProblem } from "../small-problem.ts";

const DAY = 1440;

function playerOf(problem: Problem): Player {
  return new Player(openBench(problem));
}

describe("a plan of which the evening has run late", () => {
  // Planned: the pot, 20 min to melt and 10 to pour, then 10 min at the bench. Now 25 min are left until the bench
  // shuts, and 30 are needed for the pot.
  const problem = smallProblem([{ station: 0, setUp: 0 }, { piece: 1 }], [{}, {}], {
    stations: [{ name: "lead pot", standing: null }],
    setUps: [{ station: 0, minutes: 20, keeps: { way: "heat", minutes: 45 }, putAway: 0, gives: [] }],
    sessions: [0, 1, 2].map((day) => ({ opens: day * DAY, closes: day * DAY + (day === 0 ? 25 : 180) })),
  });
  const kept: Plan = {
    visits: [
      { task: 0, part: "step", setUp: 20, start: 20, end: 30 },
      { task: 1, part: "step", setUp: 0, start: 30, end: 40 },
    ],
    unplaced: [],
    finish: [30, 40],
  };

  test("by its order alone leaves the rest of the evening empty", () => {
    const player = playerOf(problem);
    const [pot, bench] = player.bench.tasks;
    if (pot === undefined || bench === undefined) throw new Error("two tasks were planned");
    player.adopt({ order: [pot, bench], decided: new Int32Array(4), cost: 0 });
    expect([pot.start, bench.start]).toEqual([DAY + 20, DAY + 30]);
  });

  test("dispatched as planned works on what fits, and melts tomorrow", () => {
    const player = playerOf(problem);
    const cost = playByRank(asPlanned(kept), player, new Recreate(player), Number.POSITIVE_INFINITY);
    expect(player.bench.tasks.map(({ start }) => start)).toEqual([DAY + 20, 0]);
    // Finished at 10 and at 1440 + 30, and 20 min of setting up.
    expect(cost).toBe(10 + (DAY + 30) + 20);
  });
});

test("a search from nothing is no dearer than the oldest or the newest piece first, whatever the shop", () => {
  fc.assert(
    fc.property(randomProblem, (problem) => {
      const search = beginSearch(problem, { seed: 1, warm: null });
      search.go(simpleRanks.length);
      for (const rank of simpleRanks) {
        const player = playerOf(problem);
        const cost = playByRank(rank, player, new Recreate(player), Number.POSITIVE_INFINITY);
        expect(search.found.score.total).toBeLessThanOrEqual(cost);
      }
    }),
    { numRuns: 100 },
  );
});

test("a search from a plan is no dearer than dispatching as planned, whatever the shop and the plan", () => {
  fc.assert(
    fc.property(randomProblem, fc.nat(300), (problem, late) => {
      const earlier = beginSearch(problem, { seed: 1, warm: null });
      earlier.go(20);
      const warm = earlier.found.plan;
      // The same shop some minutes later, as if nothing had been done meanwhile.
      const sessions = problem.sessions
        .map(({ opens, closes }) => ({ opens: opens - late, closes: closes - late }))
        .filter(({ closes }) => closes > 0);
      const later = { ...problem, sessions };
      const search = beginSearch(later, { seed: 1, warm });
      search.go(1);
      const player = playerOf(later);
      const cost = playByRank(asPlanned(warm), player, new Recreate(player), Number.POSITIVE_INFINITY);
      expect(search.found.score.total).toBeLessThanOrEqual(cost);
    }),
    { numRuns: 60 },
  );
});

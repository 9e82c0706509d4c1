import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chanceFrom } from "../../../src/plan/chance.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import { NEVER } from "../../../src/plan/search/calendar.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { orderOf } from "../../../src/plan/search/order-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { Recreate } from "../../../src/plan/search/recreate.ts";
import { StretchAsPlayed } from "../../../src/plan/search/stretch-as-played.ts";
import { randomProblem } from "../random-problem.ts";

/** A shop with the order of dispatch standing, and how all of it was played. */
function played(problem: Parameters<typeof openBench>[0]) {
  const bench = openBench(problem);
  const order = orderOf(bench, dispatch(prepareDispatch(problem)));
  const player = new Player(bench);
  player.adopt({ order, decided: new Int32Array(2 * order.length), cost: 0 });
  const stretch = new StretchAsPlayed(bench.tasks.length);
  stretch.note(order, (task) => task.end < NEVER);
  return { order, recreate: new Recreate(player), stretch };
}

describe("the work of a stretch, done again", () => {
  test("is ranked by when it started and held as it was, but for a few tasks", () => {
    fc.assert(
      fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
        const { order, recreate, stretch } = played(problem);
        if (order.length === 0) return;
        const before = order.map(({ start, end, lifted }) => [end < NEVER ? start : NEVER, lifted]);
        stretch.vary(order, 0, 100, recreate, chanceFrom(seed));
        const after = order.map(({ index, lifted }) => [recreate.rank[index], lifted]);
        const changed = after.filter(([rank, lifted], place) => {
          const [start, was] = before[place] ?? [];
          return rank !== start || lifted !== was;
        });
        // Three, and each may have changed places with another.
        expect(changed.length).toBeLessThanOrEqual(6);
      }),
      { numRuns: 200 },
    );
  });

  test("goes in every other way now and then", () => {
    const ways = { held: 0, heldToTheEnd: 0, freed: 0, sooner: 0, later: 0 };
    fc.assert(
      fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
        const { order, recreate, stretch } = played(problem);
        const done = order.filter(({ end }) => end < NEVER);
        if (done.length === 0) return;
        for (const task of done) task.lifted = task.index % 2 === 0 ? task.end : 0;
        stretch.note(done, () => true);
        const lifts = done.map(({ lifted }) => lifted);
        stretch.vary(done, 0, 100, recreate, chanceFrom(seed));
        for (const [place, { index, lifted, start, rest }] of done.entries()) {
          const rank = recreate.rank[index] ?? 0;
          if (lifted === 100 + rest) ways.heldToTheEnd++;
          else if (lifted === 0 && lifts[place] !== 0) ways.freed++;
          else if (lifted !== lifts[place]) ways.held++;
          if (rank < start) ways.sooner++;
          if (rank > start) ways.later++;
        }
      }),
      { numRuns: 300 },
    );
    for (const [way, count] of Object.entries(ways))
      expect({ way, often: count > 5 }).toEqual({ way, often: true });
  });
});

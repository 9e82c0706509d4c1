import { describe, expect, test } from "vitest";
import { chanceFrom } from "../../../src/plan/chance.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import type { BenchTask } from "../../../src/plan/search/bench.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { isToDo } from "../../../src/plan/search/order-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { PriceOutlook } from "../../../src/plan/search/price-outlook.ts";
import { solutionOf } from "../../../src/plan/search/solution.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

/** Two tasks of ten minutes, 25 minutes apart or at most an hour, and 20 to dry. */
const twoTasks = smallProblem([{}, { waits: [waitFor(0, [[25, 60]])] }], [{ cure: 20 }]);

describe("the outlook by prices", () => {
  // Eight pieces of an hour: a bench open for three hours a day has hands for two or three of them.
  const hours = Array.from({ length: 8 }, (_, piece) => ({ piece, minutes: 60 }));
  const alike = hours.map(() => ({}));
  const crowd = smallProblem(hours, alike);

  test("of an empty bench is what pieces cost alone, where there is enough for all", () => {
    const settled = settledOutlook(twoTasks);
    expect(settled.cost(0, isDone)).toBe(75);
  });

  test("tells of all work done what it costs", () => {
    const player = new Player(openBench(twoTasks));
    player.adopt(solutionOf(player.bench.tasks, 0));
    const outlook = new PriceOutlook(player.bench, {
      until: 5000,
      ceiling: player.cost,
      every: 15,
      looks: 5,
    });
    while (!outlook.isSettled) outlook.look();
    // 0 to 10, 35 to 45, dry at 65.
    expect(player.cost).toBe(65);
    expect(outlook.cost(180, (task) => player.isPlayed(task))).toBe(65);
  });

  test("lets what may not come while a coat is wet wait until it is dry", () => {
    // The coat is done at 10 and wet for 100 min more: of starts 15 min apart dust may come from 120 on, for 10 min.
    const gives = (what: number, lasts: number) => [{ what, lasts, fromSetUp: false }];
    const problem = smallProblem([{ gives: gives(0, 100) }, { piece: 1, gives: gives(1, 0) }], [{}, {}], {
      apart: [[0, 1]],
    });
    const player = new Player(openBench(problem));
    const outlook = new PriceOutlook(player.bench, { until: 10_000, ceiling: 100_000, every: 15, looks: 0 });
    player.adopt(solutionOf(player.bench.tasks.slice(0, 1), 0));
    expect(outlook.cost(10, (task) => player.isPlayed(task))).toBe(10 + 130);
  });

  test("of a plan that is ahead of all ways on the grid tells what it will cost, not that a window shuts", () => {
    // Starts are 120 min apart: on the grid the third task would begin on the second day. It may from 20 until 120.
    const problem = smallProblem([
      {},
      { waits: [waitFor(0, [[0, null]])] },
      { waits: [waitFor(1, [[0, 100]])] },
    ]);
    const player = new Player(openBench(problem));
    const outlook = new PriceOutlook(player.bench, { until: 10_000, ceiling: 100_000, every: 120, looks: 0 });
    player.adopt(solutionOf(player.bench.tasks.slice(0, 2), 0));
    expect(outlook.cost(20, (task) => player.isPlayed(task))).toBe(130);
  });

  test("of what comes after the last start looked at counts how much later it is, and ranks it last", () => {
    // Two pieces of 10 min; starts are looked at until 180. On the second day from 1440 on, each is done at 1450.
    const problem = smallProblem([{}, { piece: 1 }], [{}, {}]);
    const { bench } = new Player(openBench(problem));
    const outlook = new PriceOutlook(bench, { until: 180, ceiling: 100_000, every: 15, looks: 0 });
    expect(outlook.cost(1440, isDone)).toBe(2 * 1450);
    const rank = new Float64Array(2);
    outlook.rank(1440, isDone, rank);
    expect([...rank]).toEqual([165, 165]);
  });

  test("of what has missed its windows counts the horizon, though it also comes after the last start", () => {
    // The second task may begin from 10 until 110, and cannot before 1440.
    const problem = smallProblem([{}, { waits: [waitFor(0, [[0, 100]])] }]);
    const player = new Player(openBench(problem));
    const outlook = new PriceOutlook(player.bench, { until: 180, ceiling: 100_000, every: 15, looks: 0 });
    player.adopt(solutionOf(player.bench.tasks.slice(0, 1), 0));
    expect(outlook.cost(1440, (task) => player.isPlayed(task))).toBe(problem.horizon);
  });

  test.for([5000, 1_000_000])(
    "is dearer where all would have the hands at once, be the plan known never so dear: %i",
    (ceiling) => {
      expect(settledOutlook(crowd, ceiling).cost(0, isDone)).toBeGreaterThan(8 * 60 + 1440);
    },
  );

  test("is what pieces cost alone, too, where no plan is known", () => {
    expect(settledOutlook(crowd, Number.POSITIVE_INFINITY).cost(0, isDone)).toBe(8 * 60);
  });

  test("by prices varied is another, each time around those found", () => {
    const outlook = settledOutlook(crowd);
    const found = outlook.cost(0, isDone);
    const chance = chanceFrom(1);
    for (let time = 0; time < 20; time++) {
      outlook.vary(chance);
      expect(outlook.cost(0, isDone)).not.toBe(found);
    }
    outlook.vary(() => 0.5);
    expect(outlook.cost(0, isDone)).toBeCloseTo(found, 6);
  });

  test("ranks work by when it would begin, what is done not at all", () => {
    const outlook = settledOutlook(twoTasks);
    const rank = new Float64Array(2).fill(-1);
    outlook.rank(0, isDone, rank);
    expect([...rank]).toEqual([0, 45]);
    rank.fill(-1);
    outlook.rank(1440, ({ index }) => index === 0, rank);
    expect(rank[0]).toBe(-1);
  });
});

/** Of a bench on which nothing was done. */
function settledOutlook(problem: Problem, ceiling = 100_000): PriceOutlook {
  const bench = openBench(problem);
  const outlook = new PriceOutlook(bench, { until: 10_000, ceiling, every: 15, looks: 60 });
  while (!outlook.isSettled) outlook.look();
  return outlook;
}

function isDone(task: BenchTask): boolean {
  return !isToDo(task);
}

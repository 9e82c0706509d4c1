import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { findBegin } from "../../../src/plan/search/begin-task.ts";
import { NextOutlook } from "../../../src/plan/search/next-outlook.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { orderOf } from "../../../src/plan/search/order-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { PricedWays } from "../../../src/plan/search/priced-ways.ts";
import { solutionOf } from "../../../src/plan/search/solution.ts";
import { randomProblem } from "../random-problem.ts";
import { smallProblem, waitFor } from "../small-problem.ts";
import { drawPrices } from "./drawn-prices.ts";

describe("what a plan will cost with one task more", () => {
  test("is what its piece's best way costs then, where nothing has a price", () => {
    // 0 to 10; of starts 15 min apart 45 is the first after 35; dry 20 min after 55.
    const problem = smallProblem([{}, { waits: [waitFor(0, [[25, 60]])] }], [{ cure: 20 }]);
    expect(foretold(problem, 0)).toBe(75);
  });

  test("counts the hands that pass meanwhile at their price", () => {
    // Done at 10; the next start is 15, by when three quarters of 15 min of hands have passed.
    const problem = smallProblem([{}], [{}]);
    expect(foretold(problem, 4)).toBe(10 + 0.75 * 15 * 4);
  });

  test("lets what must keep apart from a coat wait until that is dry, and the coat that comes after nothing", () => {
    // A coat from 0 to 10 stays wet for 60 min more: of starts 15 min apart dust may come from 75 on, for 10 min.
    const gives = (what: number, lasts: number) => [{ what, lasts, fromSetUp: false }];
    const coat = { gives: gives(0, 60) };
    const sand = { gives: gives(1, 0) };
    const pieces = [{}, {}];
    const apart = { apart: [[0, 1]] as const };
    expect(foretold(smallProblem([coat, { ...sand, piece: 1 }], pieces, apart), 0)).toBe(10 + 85);
    expect(foretold(smallProblem([sand, { ...coat, piece: 1 }], pieces, apart), 0)).toBe(10 + 25);
  });

  test("is told as it will be once the task is played, whatever the shop, the prices and the work done before", () => {
    let told = 0;
    const expectAsPlayed = (problem: Problem, seed: number): void => {
      const player = new Player(openBench(problem));
      const { bench } = player;
      const outlook = new NextOutlook(player, pricedWays(player, seed));
      const order = orderOf(bench, dispatch(prepareDispatch(problem)));
      for (const [place, task] of order.entries()) {
        player.adopt(solutionOf(order.slice(0, place), 0));
        outlook.read();
        if (!findBegin(bench, task, bench.clock) || task.left > 0) return;
        const cost = outlook.costWith(task);
        player.adopt(solutionOf(order.slice(0, place + 1), 0));
        outlook.read();
        expect(cost).toBeCloseTo(outlook.cost(), 5);
        told++;
      }
    };
    fc.assert(fc.property(randomProblem, fc.nat(1000), expectAsPlayed), { numRuns: 200 });
    expect(told).toBeGreaterThan(500);
  });
});

/** What a problem's first task going first is foretold to cost, with every minute of hands at a price. */
function foretold(problem: Problem, price: number): number {
  const player = new Player(openBench(problem));
  const ways = new PricedWays(player.bench, 10_000, 15);
  const [hands] = ways.scarce;
  hands?.clear();
  hands?.take(0, 10_000, 1.75);
  hands?.steer();
  hands?.adjust(price / 15);
  ways.reprice();
  for (const chain of ways.chains) ways.solve(chain);
  const outlook = new NextOutlook(player, ways);
  player.adopt(solutionOf([], 0));
  outlook.read();
  const task = at(player.bench.tasks, 0);
  expect(findBegin(player.bench, task, 0)).toBe(true);
  return outlook.costWith(task);
}

function pricedWays({ bench }: Player, seed: number): PricedWays {
  const ways = new PricedWays(bench, Math.min(bench.horizon, 5760), 60);
  drawPrices(ways, seed);
  for (const chain of ways.chains) ways.solve(chain);
  return ways;
}

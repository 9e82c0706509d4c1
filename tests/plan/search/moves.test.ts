import fc from "fast-check";
import { expect, test } from "vitest";
import { chanceFrom } from "../../../src/plan/chance.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import { makeMoves } from "../../../src/plan/search/moves.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { orderOf } from "../../../src/plan/search/order-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { Recreate } from "../../../src/plan/search/recreate.ts";
import { RuleSearch } from "../../../src/plan/search/rule-search.ts";
import { randomProblem } from "../random-problem.ts";

test("no move loses a task or has it twice, though for some no time is found", { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
      const bench = openBench(problem);
      const order = orderOf(bench, dispatch(prepareDispatch(problem)));
      const tasks = order.map(({ index }) => index).sort((a, b) => a - b);
      const player = new Player(bench);
      player.adopt({ order, decided: new Int32Array(2 * order.length), cost: 0 });
      const chance = chanceFrom(seed);
      const moves = makeMoves(player, chance, new RuleSearch(player, new Recreate(player), chance));
      for (let round = 0; round < 20 && order.length > 1; round++) {
        for (const { name, play } of moves) {
          const ceiling = 1.2 * player.cost;
          const cost = play(ceiling);
          if (cost > ceiling) player.reject();
          else player.accept(cost);
          const now = player.order.map(({ index }) => index).sort((a, b) => a - b);
          expect({ name, tasks: now }).toEqual({ name, tasks });
        }
      }
    }),
    { numRuns: 100 },
  );
});

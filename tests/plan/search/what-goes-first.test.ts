import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/plan/problem.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { Recreate } from "../../../src/plan/search/recreate.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { makeStyle } from "../../../src/plan/search/style.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

describe("what goes first in a searched plan", () => {
  test("is the piece that costs most by the minute, where all are late", () => {
    // An hour of work each, both due at once. The one of weight 3 first: 10 x (3 x 60 + 1 x 120) + 60 + 120 = 3180; it
    // last: 10 x (1 x 60 + 3 x 120) + 180 = 4380.
    const problem = smallProblem(
      [
        { piece: 0, minutes: 60 },
        { piece: 1, minutes: 60 },
      ],
      [
        { due: 0, weight: 1 },
        { due: 0, weight: 3 },
      ],
    );
    expect(found(problem)).toEqual({ total: 3180, starts: [60, 0] });
  });

  test("is dust, before the coat that would keep it out of the room", () => {
    // A coat of 10 min keeps dust out for 100 min more. Dust of the other piece first: its 20 min, then the coat at 30: 20
    // + 30 = 50. The coat first: 10, and dust from 110 to 130: 140.
    const problem = smallProblem(
      [
        { piece: 0, minutes: 10, gives: [{ what: 0, lasts: 100, fromSetUp: false }] },
        { piece: 1, minutes: 20, gives: [{ what: 1, lasts: 0, fromSetUp: false }] },
      ],
      [{}, {}],
      { apart: [[0, 1]] },
    );
    expect(found(problem)).toEqual({ total: 50, starts: [20, 0] });
  });

  test("leaves the last hook to a coat that must be laid soon", () => {
    // The second coat of the first piece may be laid 30 to 40 min after its first, and hangs on the one hook. With the
    // first coat from 0 to 10 and the second from 40 to 50 the hook is free at 110, by the end of the other piece's coat: 50
    // + 110 = 160. That coat before, from 0 to 10, has the hook until 70: the first coat from 10 to 20, the second from 60,
    // 40 min after it, to 70: 10 + 70 = 80.
    const hook = { place: 0, until: 60 };
    const problem = smallProblem(
      [
        { piece: 0, minutes: 10 },
        { piece: 0, minutes: 10, hook, waits: [waitFor(0, [[30, 40]])] },
        { piece: 1, minutes: 10, hook: { ...hook, stays: true } },
      ],
      [{}, {}],
      { places: [{ name: "rack", hooks: 1 }] },
    );
    expect(found(problem)).toEqual({ total: 80, starts: [10, 60, 0] });
  });
});

describe("with room for one piece out", () => {
  // The first may be begun at once and is out until 110. The second goes before it by rank, but is not there before 20.
  const tasks = [
    { piece: 0, minutes: 10 },
    { piece: 1, minutes: 10 },
  ];
  const coming = { release: 20, underLimit: true };
  const problem = smallProblem(tasks, [{ cure: 100, underLimit: true }, coming], { mostOut: 1 });

  test("one that is to come is waited for where pieces are begun in turn", () => {
    expect(startsByRank(problem, [1, 0], true)).toEqual([30, 20]);
  });

  test("what can be begun is begun where they are not", () => {
    expect(startsByRank(problem, [1, 0], false)).toEqual([0, 110]);
  });

  test("one that needs no room, as it was tagged before, waits for none", () => {
    const tagged = smallProblem(tasks, [{ cure: 100 }, coming], { mostOut: 1 });
    expect(startsByRank(tagged, [1, 0], true)).toEqual([0, 110]);
  });
});

function startsByRank(problem: Problem, ranks: readonly number[], inTurn: boolean): number[] {
  const player = new Player(openBench(problem));
  const recreate = new Recreate(player);
  recreate.rank.set(ranks);
  const { tasks } = player.bench;
  recreate.play(tasks, 0, Number.POSITIVE_INFINITY, makeStyle({ inTurn }));
  return tasks.map(({ start }) => start);
}

function found(problem: Problem): { total: number; starts: number[] } {
  const search = beginSearch(problem, { seed: 1, warm: null });
  search.go(100);
  const { plan, score } = search.found;
  const starts = problem.tasks.map(
    (_, task) => plan.visits.find((visit) => visit.task === task)?.start ?? -1,
  );
  return { total: score.total, starts };
}

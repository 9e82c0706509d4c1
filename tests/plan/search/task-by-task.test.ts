import { describe, expect, test } from "vitest";
import { chanceFrom } from "../../../src/plan/chance.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { firstAlike } from "../../../src/plan/search/alike-pieces.ts";
import { ComingFree } from "../../../src/plan/search/coming-free.ts";
import { nameWork } from "../../../src/plan/search/name-work.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { PricedWays } from "../../../src/plan/search/priced-ways.ts";
import { solutionOf } from "../../../src/plan/search/solution.ts";
import { TaskByTask } from "../../../src/plan/search/task-by-task.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

describe("going on task by task", () => {
  /** An hour's task, and one of half an hour that is due. */
  const longAndDue = smallProblem(
    [
      { piece: 0, minutes: 60 },
      { piece: 1, minutes: 30 },
    ],
    [{}, { due: 30 }],
  );

  test("keeps of all that have done the same work only what costs least", () => {
    expect(plansSeen(longAndDue, [], { width: 10 })).toEqual(["1 0, 0 30"]);
  });

  test("leaves out the dearest where more is found than may be kept", () => {
    // After either of them nothing more begins within the stretch.
    expect(plansSeen(longAndDue, [], { width: 10, until: 30 })).toEqual(["1 0", "0 0"]);
    expect(plansSeen(longAndDue, [], { width: 1, until: 30 })).toEqual(["1 0"]);
  });

  test("takes pieces that are just alike for one another", () => {
    const problem = smallProblem([{ piece: 0 }, { piece: 1 }], [{}, {}]);
    expect(plansSeen(problem, [], { width: 10, until: 10 })).toEqual(["0 0"]);
  });

  test("begins nothing that makes a window shut for good be missed, nor what lies beyond the stretch", () => {
    // The second task of piece 0 has to begin by minute 20; piece 1 would have the hands for an hour.
    const problem = smallProblem(
      [
        { piece: 0, minutes: 10 },
        { piece: 0, minutes: 10, waits: [waitFor(0, [[0, 10]])] },
        { piece: 1, minutes: 60 },
        { piece: 2, minutes: 10, release: 1440 },
      ],
      [{}, { weight: 100 }, {}],
    );
    expect(plansSeen(problem, [0], { width: 10 })).toEqual(["0 0, 1 10, 2 20"]);
  });

  test("lets what was done before end later where nothing else can meet a window", () => {
    // An hour of other work from 60 on is in the way of what has to follow 80 to 100 min after minute 10.
    const problem = smallProblem(
      [
        { piece: 0, minutes: 10 },
        { piece: 0, minutes: 10, waits: [waitFor(0, [[80, 100]])] },
        { piece: 1, minutes: 60, release: 60 },
      ],
      [{}, {}],
    );
    expect(plansSeen(problem, [0, 2], { width: 10 })).toEqual(["0 0, 2 60", "0 10, 2 60, 1 120"]);
  });
});

/** The plans that nothing more can go into, each as its tasks and when they begin. Nothing has a price. */
function plansSeen(
  problem: Problem,
  done: readonly number[],
  { width, until = 180 }: { readonly width: number; readonly until?: number },
): string[] {
  const player = new Player(openBench(problem));
  const { tasks } = player.bench;
  const ways = new PricedWays(player.bench, 10_000, 15);
  const names = nameWork(player.bench, firstAlike(problem), chanceFrom(1));
  const taskByTask = new TaskByTask(player, ways, new ComingFree(player.bench), names, width);
  const order = tasks.filter(({ index }) => done.includes(index));
  taskByTask.begin([solutionOf(order, 0)], until);
  const seen: string[] = [];
  while (!taskByTask.isOver) {
    taskByTask.round(() => {
      seen.push(
        player
          .played()
          .order.map(({ index, begin }) => `${index} ${begin}`)
          .join(", "),
      );
    });
  }
  return seen;
}

import type { BenchTask } from "./bench.ts";

/** An order of work with what was decided for each task of it: by when it is lifted, and about its set-up. */
export interface Solution {
  readonly order: readonly BenchTask[];
  readonly decided: Int32Array;
  readonly cost: number;
}

/** An order as its tasks are decided about now. */
export function solutionOf(order: readonly BenchTask[], cost: number): Solution {
  const decided = new Int32Array(2 * order.length);
  for (let place = 0; place < order.length; place++) {
    const task = order[place] as BenchTask;
    decided[2 * place] = task.lifted;
    decided[2 * place + 1] = task.decided;
  }
  return { order, decided, cost };
}

/** Writes into the tasks of an order, from a place on, what was decided for each. */
export function decideFrom(from: number, order: readonly BenchTask[], decided: Int32Array): void {
  for (let place = from; place < order.length; place++) {
    const task = order[place] as BenchTask;
    task.lifted = decided[2 * place] as number;
    task.decided = decided[2 * place + 1] as number;
  }
}

/** The first place at which a solution is not as the order that stands, or not decided so. */
export function sameUpTo(standing: readonly BenchTask[], { order, decided }: Solution): number {
  let place = 0;
  for (; place < order.length; place++) {
    const task = standing[place];
    if (task === undefined || task !== order[place]) break;
    if (task.lifted !== decided[2 * place] || task.decided !== decided[2 * place + 1]) break;
  }
  return place;
}

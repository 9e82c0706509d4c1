import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { pieceCost, placeTask } from "./place-task.ts";

/**
 * Brings a bench just made to where every play begins: what is in hand goes on at once whatever the hours, one after
 * the other for each pair of hands.
 */
export function beginBench(bench: Bench): void {
  for (const piece of bench.pieces) {
    piece.left = piece.tasks.length;
    // One with nothing to do never finishes, and counts as any that does not.
    piece.leastFinish =
      piece.left === 0 ? bench.horizon : Math.min(bench.horizon, leastFinish(bench, piece.tasks));
    bench.cost += pieceCost(bench, piece, piece.leastFinish);
  }
  for (const task of bench.tasks) {
    if (!task.running) continue;
    task.begin = Math.max(Math.min(...bench.hands), task.piece.free);
    task.start = task.begin;
    task.end = task.start + task.minutes;
    placeTask(bench, task);
  }
}

/** When the piece is finished at the earliest, if it is worked as if alone. */
function leastFinish(bench: Bench, tasks: readonly BenchTask[]): Minutes {
  const { calendar } = bench;
  return tasks.reduce((most, task) => {
    if (task.running) return most;
    const need = task.mayStop ? 1 : task.minutes;
    let from = Math.max(0, task.release);
    for (const { on, windows } of task.waits) {
      if (on.ended !== null && windows[0] !== undefined)
        from = Math.max(from, openingAfter(windows[0].opens, on.ended));
    }
    const done = Math.min(bench.horizon, calendar.meeting(from, 0, need) + need);
    return Math.max(most, done + task.tail, task.leastFinish[calendar.at(done - 1)] ?? 0);
  }, 0);
}

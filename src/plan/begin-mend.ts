import { at } from "./at.ts";
import { type BenchRun, becomeCandidate, type TaskRun } from "./bench-run.ts";
import type { Wait } from "./problem.ts";

/** A coat that was mended so often and still missed its window will not be helped by another mend. */
const mostMends = 2;

/**
 * All windows of a wait have shut: the coat is to be levelled and laid again, and whatever follows it is to be done
 * from there, what was done of it over again. A piece may meet this several times; each costs its hands-on in the score.
 *
 * @returns false when no mend helps: the shut is hard, or mends before it did not help
 */
export function beginMend(run: BenchRun, { on, mend }: Wait): boolean {
  const coat = at(run.tasks, on);
  if (mend === null || coat.mends >= mostMends) return false;
  coat.mends++;
  coat.mending = mend;
  reopen(run, coat);
  coat.rest += mend;
  coat.piece.handsLeft += mend;
  coat.wake = 0;
  const below = allThatFollows(run, coat);
  for (const task of below) reopen(run, task);
  for (const task of below) task.pending = countPending(run, task);
  becomeCandidate(run, coat);
  return true;
}

/** Sets a task back to its beginning. One that had been worked will be worked again. */
function reopen(run: BenchRun, task: TaskRun): void {
  const place = run.candidates.indexOf(task);
  if (place >= 0) run.candidates.splice(place, 1);
  const { piece } = task;
  const done = task.end !== Number.POSITIVE_INFINITY;
  if (done) piece.tasksLeft++;
  piece.handsLeft += task.task.minutes - (done ? 0 : task.rest);
  task.again = task.again || done || task.split;
  task.rest = task.task.minutes;
  task.split = false;
  task.end = Number.POSITIVE_INFINITY;
  task.latest = Number.POSITIVE_INFINITY;
}

function allThatFollows(run: BenchRun, coat: TaskRun): TaskRun[] {
  const found = new Set<TaskRun>();
  const visit = (task: TaskRun): void => {
    for (const next of task.prepared.followers) {
      const follower = at(run.tasks, next);
      if (found.has(follower)) continue;
      found.add(follower);
      visit(follower);
    }
  };
  visit(coat);
  return [...found];
}

function countPending(run: BenchRun, { task }: TaskRun): number {
  return task.waits.filter(({ on }) => at(run.tasks, on).end === Number.POSITIVE_INFINITY).length;
}

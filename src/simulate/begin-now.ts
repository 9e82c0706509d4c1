import { at } from "../plan/at.ts";
import { beginRun, enterSession } from "../plan/bench-run.ts";
import { placeTask } from "../plan/place-task.ts";
import type { Visit } from "../plan/plan.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Problem } from "../plan/problem.ts";
import { emptyTrial, tryTask } from "../plan/try-task.ts";
import type { Minutes } from "../time/instant.ts";

/** The first of some tasks that can begin at once and is whole by a minute, as an act; null: none of them. */
export function firstToBegin(
  problem: Problem,
  tasks: readonly number[],
  by: Minutes,
): readonly Visit[] | null {
  if (tasks.length === 0) return null;
  const run = beginRun(prepareDispatch(problem), null);
  if (enterSession(run, 0) > 0) return null;
  const trial = emptyTrial();
  for (const index of tasks) {
    const task = at(run.tasks, index);
    if (task.pending > 0 || task.wake > 0 || tryTask(run, task, 0, trial) > 0) continue;
    if (trial.missed !== null || trial.left > 0 || trial.end > by) continue;
    placeTask(run, task, 0, trial);
    return run.visits;
  }
  return null;
}

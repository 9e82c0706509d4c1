import type { Minutes } from "../time/instant.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import type { Gives } from "./problem.ts";
import type { Trial } from "./try-task.ts";

/**
 * The first minute from `t` on at which nothing is in the room that must keep apart from what the task, its set-up
 * and its preparation give off.
 */
export function clearOfAir(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  if (run.air.length === 0) return t;
  let clear = t;
  visitEmissions(task, t, trial, (what, from, until) => {
    const keepApart = run.prepared.apart[what];
    if (keepApart === undefined) return;
    for (const other of run.air) {
      if (keepApart[other.what] !== true || other.until <= from || other.from >= until) continue;
      clear = Math.max(clear, t + other.until - from);
    }
  });
  return clear;
}

/** Calls `visit` for all that the work tried puts into the room, each with its span in minutes. */
export function visitEmissions(
  task: TaskRun,
  t: Minutes,
  trial: Trial,
  visit: (what: number, from: Minutes, until: Minutes) => void,
): void {
  const setUpFrom = trial.start - trial.setUp;
  for (const { what, fromSetUp, lasts } of task.task.gives) {
    visit(what, fromSetUp ? setUpFrom : trial.start, trial.end + lasts);
  }
  for (const what of task.setUp?.gives ?? noGives) {
    visit(what, setUpFrom, trial.end + (task.setUp?.putAway ?? 0));
  }
  let from = t;
  for (const { preparation } of trial.windows) {
    if (preparation === null) continue;
    const until = from + preparation.minutes;
    for (const { what, lasts } of preparation.gives) visit(what, from, until + lasts);
    from = until + preparation.settles;
  }
}

const noGives: readonly Gives["what"][] = [];

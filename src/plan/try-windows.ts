import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import { openingAfter, shutAfter } from "./lag.ts";
import type { PlanWindow, Wait } from "./problem.ts";
import type { Trial } from "./try-task.ts";

/**
 * Finds the first window of each wait that a task begun at `t` still meets, with the preparation it asks for, and
 * writes preparation, set-up, start and missed into `trial`.
 *
 * A later window may bring preparation, and preparation may push the start past another window's shut; windows are
 * only ever given up for later ones, so this ends.
 *
 * @returns `t` when the windows are open, else the first minute at which they may be; Infinity with `missed` set:
 *   one has shut for good
 */
export function tryWindows(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  const { windows } = trial;
  const waits = waitsNow(task);
  trial.chosen = 0;
  for (let settled = false; !settled; ) {
    settled = true;
    const ready = layOut(task, t, trial);
    if (ready > t) return ready;
    for (let index = 0; index < waits.length; index++) {
      const wait = waits[index] as Wait;
      const before = index < trial.chosen ? windows[index] : undefined;
      const window = firstNotShut(wait, at(run.tasks, wait.on).end, trial.start, before);
      if (window === null) {
        trial.missed = wait;
        return Number.POSITIVE_INFINITY;
      }
      if (window === before) continue;
      settled = settled && window.preparation === (before?.preparation ?? null);
      windows[index] = window;
      if (before === undefined) trial.chosen++;
    }
  }
  return latestOpening(run, task, t, trial);
}

const noWaits: readonly Wait[] = [];

/** The waits that matter still: a part done, or a coat to be mended, asks no window again. */
function waitsNow(task: TaskRun): readonly Wait[] {
  return task.split || task.mending !== null ? noWaits : task.task.waits;
}

/** Sets preparation, set-up and start for the windows chosen so far. @returns `t`, or when the set-up is ready */
function layOut(task: TaskRun, t: Minutes, trial: Trial): Minutes {
  const { windows, chosen } = trial;
  trial.preparation = 0;
  for (let index = 0; index < chosen; index++) {
    const { preparation } = windows[index] as PlanWindow;
    if (preparation !== null) trial.preparation += preparation.minutes + preparation.settles;
  }
  const from = t + trial.preparation;
  const { standing } = task.station ?? { standing: null };
  trial.setUp = setUpMinutes(task, from);
  trial.start = from + trial.setUp;
  if (trial.setUp > 0 || standing === null || standing === "any" || task.setUp === null) return t;
  return Math.max(t, standing.ready - trial.preparation);
}

/** Minutes of setting up that a task needs if its hands-on could begin at `from`. */
export function setUpMinutes(task: TaskRun, from: Minutes): Minutes {
  const { setUp, station } = task;
  if (setUp === null || station === null || station.standing === "any") return 0;
  const { standing } = station;
  if (standing === null || standing.setUp !== task.task.setUp) return setUp.minutes;
  return stillGood(task, from) ? 0 : setUp.minutes;
}

/** Whether what stands, being what the task needs, keeps for a start at `from` (or when it is ready, if later). */
function stillGood(task: TaskRun, from: Minutes): boolean {
  const standing = task.station?.standing;
  if (task.setUp === null || standing === null || standing === undefined || standing === "any") return false;
  const { keeps } = task.setUp;
  const start = Math.max(from, standing.ready);
  if (keeps.way === "heat") return start <= (standing.lastUsed ?? standing.ready) + keeps.minutes;
  if (keeps.way === "mix") {
    return standing.served < keeps.serves && start + task.rest <= standing.ready + keeps.minutes;
  }
  return true;
}

/** The first window from `from` on (null or undefined: the first of all) that is not shut at `start`. */
function firstNotShut(
  wait: Wait,
  end: Minutes,
  start: Minutes,
  from: PlanWindow | undefined,
): PlanWindow | null {
  const { windows } = wait;
  let passed = from === undefined;
  for (let index = 0; index < windows.length; index++) {
    const window = windows[index] as PlanWindow;
    passed = passed || window === from;
    if (passed && start <= shutAfter(window.shuts, end)) return window;
  }
  return null;
}

/** When all chosen windows are open; a preparation must not begin before its window either. */
function latestOpening(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  const waits = waitsNow(task);
  let earliest = t;
  for (let index = 0; index < waits.length; index++) {
    const window = trial.windows[index] as PlanWindow;
    const { end } = at(run.tasks, (waits[index] as Wait).on);
    const opens = openingAfter(window.opens, end);
    const lead = window.preparation === null ? trial.start - t : 0;
    earliest = Math.max(earliest, opens - lead);
  }
  return earliest;
}

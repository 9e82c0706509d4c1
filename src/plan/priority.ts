import type { Minutes } from "../time/instant.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import type { Trial } from "./try-task.ts";

/** How a task that can begin now stands against the others. */
export interface Rank {
  /** Leaving it past this session costs preparation, a mend or a set-up that stands now. */
  readonly pressing: boolean;
  /** Pressing: the minute it must be begun by, least first. Otherwise: what it is worth, most first. */
  readonly key: number;
}

/** From this far before its due date on (less the work still to come) a piece grows dearer to leave: three days. */
const dueHorizon: Minutes = 3 * 24 * 60;

/**
 * Ranks a task that was tried at `t`. What presses goes first, earliest shut first; then by what a minute of delay
 * costs over the hands-on still to do on the piece, so nearly finished ones come first. The worth is the apparent
 * tardiness cost index (A. Vepsalainen and T. Morton, Priority rules for job shops with weighted tardiness costs,
 * Management Science 33, 1987) with a straight slope for its exponential.
 */
export function rankTask(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Rank {
  const nextOpens = run.prepared.problem.sessions[run.session + 1]?.opens ?? Number.POSITIVE_INFINITY;
  const must = Math.min(beginBy(trial, nextOpens), keepsUntil(task, trial));
  if (must !== Number.POSITIVE_INFINITY) return { pressing: true, key: must };
  return { pressing: false, key: worth(task, t, trial) };
}

/** Infinity unless the window shuts before the next session can use it. */
function beginBy(trial: Trial, nextOpens: Minutes): Minutes {
  const latest = trial.shut - trial.setUp;
  return latest < nextOpens ? latest : Number.POSITIVE_INFINITY;
}

/** When the melt or cup that stands, and that the task can use, is good no more. */
function keepsUntil(task: TaskRun, trial: Trial): Minutes {
  const standing = task.station?.standing ?? null;
  if (trial.setUp > 0 || task.setUp === null || standing === null || standing === "any") {
    return Number.POSITIVE_INFINITY;
  }
  const { keeps } = task.setUp;
  if (keeps.way === "load") return Number.POSITIVE_INFINITY;
  const since = keeps.way === "heat" ? (standing.lastUsed ?? standing.ready) : standing.ready;
  return since + keeps.minutes;
}

/** A set-up that must be made counts thrice, so that pieces of one colour come together. */
function worth(task: TaskRun, t: Minutes, trial: Trial): number {
  const { due, weight } = task.piece.piece;
  const slack = due === null ? dueHorizon : due - t - task.prepared.tail;
  const urgency = Math.min(1, Math.max(0, 1 - slack / dueHorizon));
  return (1 + 10 * weight * urgency) / (task.piece.handsLeft + 3 * trial.setUp);
}

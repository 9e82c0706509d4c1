import type { Minutes } from "../time/instant.ts";
import { type BenchRun, findLatest, type TaskRun } from "./bench-run.ts";
import { setUpMinutes } from "./try-windows.ts";

/** How a task stands against the others. */
export interface Rank {
  /** Leaving it past this session costs preparation, a mend or a set-up that stands now. */
  pressing: boolean;
  /** Pressing: the minute it must be begun by, least first. Otherwise: what it is worth, most first. */
  key: number;
}

/** From this far before its due date on (less the work still to come) a piece grows dearer to leave: three days. */
const dueHorizon: Minutes = 3 * 24 * 60;

/**
 * Ranks a task at `t`, before it is known whether it can begin. What presses goes first, earliest shut first; then by
 * what a minute of delay costs over the hands-on still to do on the piece, so nearly finished ones come first. The
 * worth is the apparent tardiness cost index (A. Vepsalainen and T. Morton, Priority rules for job shops with weighted
 * tardiness costs, Management Science 33, 1987) with a straight slope for its exponential.
 */
export function rankTask(run: BenchRun, task: TaskRun, t: Minutes, nextOpens: Minutes): void {
  if (task.latest < t) findLatest(run, task, t);
  const { rank } = task;
  rank.key = keepsUntil(task, t);
  if (task.latest < nextOpens) rank.key = Math.min(rank.key, task.latest);
  rank.pressing = rank.key !== Number.POSITIVE_INFINITY;
  if (!rank.pressing) rank.key = worth(task, t);
}

/** Whether a task goes before another of those ranked. Ties go to the lower number, whatever the order of a list. */
export function goesBefore(task: TaskRun, other: TaskRun): boolean {
  const { pressing, key } = task.rank;
  if (pressing !== other.rank.pressing) return pressing;
  if (key !== other.rank.key) return pressing ? key < other.rank.key : key > other.rank.key;
  return task.index < other.index;
}

/** When the melt or cup that stands, and that the task can use, is good no more; Infinity: there is none. */
function keepsUntil({ task, station, setUp }: TaskRun, t: Minutes): Minutes {
  const standing = station?.standing ?? null;
  if (setUp === null || standing === null || standing === "any" || standing.setUp !== task.setUp) {
    return Number.POSITIVE_INFINITY;
  }
  const { keeps } = setUp;
  if (keeps.way === "load") return Number.POSITIVE_INFINITY;
  const until =
    (keeps.way === "heat" ? (standing.lastUsed ?? standing.ready) : standing.ready) + keeps.minutes;
  return until < t || (keeps.way === "mix" && standing.served >= keeps.serves)
    ? Number.POSITIVE_INFINITY
    : until;
}

/** A set-up that must be made counts thrice, so that pieces of one colour come together. */
function worth(task: TaskRun, t: Minutes): number {
  const { due, weight } = task.piece.piece;
  const slack = due === null ? dueHorizon : due - t - task.prepared.tail;
  const urgency = Math.min(1, Math.max(0, 1 - slack / dueHorizon));
  return (1 + 10 * weight * urgency) / (task.piece.handsLeft + 3 * setUpMinutes(task, t));
}

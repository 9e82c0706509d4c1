import type { Minutes } from "../time/instant.ts";
import { type BenchRun, findLatest, type TaskRun } from "./bench-run.ts";
import { setUpMinutes } from "./try-windows.ts";

/**
 * Ranks from here on do not press; below, a rank is the minute a task must be begun by. Leaving that past the session
 * costs preparation, a mend or a set-up that stands now.
 */
const unhurried = 1e9;

export function isPressing(rank: number): boolean {
  return rank < unhurried;
}

/** From this far before its due date on (less the work still to come) a piece grows dearer to leave: three days. */
const dueHorizon: Minutes = 3 * 24 * 60;

/**
 * How a task ranks at `t`, least first, before it is known whether it can begin. What presses goes first, earliest shut
 * first; then by what a minute of delay costs over the hands-on still to do on the piece, so nearly finished ones come
 * first. The worth is the apparent tardiness cost index (A. Vepsalainen and T. Morton, Priority rules for job shops with
 * weighted tardiness costs, Management Science 33, 1987) with a straight slope for its exponential.
 */
export function rankTask(run: BenchRun, task: TaskRun, t: Minutes, nextOpens: Minutes): number {
  if (task.latest < t) findLatest(run, task, t);
  let must = task.latest < nextOpens ? task.latest : Number.POSITIVE_INFINITY;
  if (task.setUp !== null) must = Math.min(must, keepsUntil(task, t));
  return must === Number.POSITIVE_INFINITY ? unhurried + cheapness(task, t) : must;
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

/** Hands-on minutes of the piece for what a minute of its delay costs. A set-up to be made counts thrice. */
function cheapness(task: TaskRun, t: Minutes): number {
  const hands = task.piece.handsLeft + (task.setUp === null ? 0 : 3 * setUpMinutes(task, t));
  const { due, weight } = task.piece.piece;
  if (due === null) return hands;
  const slack = due - t - task.prepared.tail;
  const urgency = Math.min(1, Math.max(0, 1 - slack / dueHorizon));
  return hands / (1 + 10 * weight * urgency);
}

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { type BenchRun, becomeCandidate, type PieceRun, type TaskRun } from "./bench-run.ts";
import { fillAir } from "./clear-of-air.ts";
import { openingAfter } from "./lag.ts";
import type { PlanWindow } from "./problem.ts";
import type { Trial } from "./try-task.ts";

/** Works a task as it was tried at `t`: visits, what stands, what is in the air, hooks, and what may follow. */
export function placeTask(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): void {
  writeVisits(run, task, t, trial);
  run.hands[run.hands.indexOf(Math.min(...run.hands))] = trial.end;
  occupyStation(task, trial);
  fillAir(run, task, t, trial);
  const { piece } = task;
  piece.begun = true;
  piece.free = trial.end;
  piece.hookUntil = Math.min(piece.hookUntil, t);
  dropUnhooked(run.hung, t);
  piece.handsLeft -= trial.end - trial.start;
  task.rest = trial.left;
  task.split = trial.left > 0;
  if (trial.left === 0) completeTask(run, task, trial.end);
}

/** Preparations in the order of the waits that ask for them, then the work itself. */
function writeVisits(run: BenchRun, { index, mending, again }: TaskRun, t: Minutes, trial: Trial): void {
  let from = t;
  for (let place = 0; place < trial.chosen; place++) {
    const { preparation } = trial.windows[place] as PlanWindow;
    if (preparation === null) continue;
    const end = from + preparation.minutes;
    run.visits.push({ task: index, part: "preparation", setUp: 0, start: from, end });
    from = end + preparation.settles;
  }
  const part = mending !== null ? "mend" : again ? "again" : "step";
  run.visits.push({ task: index, part, setUp: trial.setUp, start: trial.start, end: trial.end });
}

/** What stands there from now on, and the putting away it brings before the bench shuts. */
function occupyStation({ station, task, setUp }: TaskRun, trial: Trial): void {
  if (station === null) return;
  station.busyUntil = trial.end;
  if (task.setUp === null || setUp === null) return;
  const { standing } = station;
  const kept = trial.setUp > 0 || standing === "any" ? null : standing;
  station.standing = {
    setUp: task.setUp,
    ready: kept?.ready ?? trial.start,
    lastUsed: trial.end,
    served: (kept?.served ?? 0) + 1,
  };
  station.owes = Math.max(station.owes, setUp.putAway);
}

/** Drops the pieces whose hooks are free by a minute. */
function dropUnhooked(hung: PieceRun[], t: Minutes): void {
  let kept = 0;
  for (let index = 0; index < hung.length; index++) {
    const piece = hung[index] as PieceRun;
    if (piece.hookUntil > t) hung[kept++] = piece;
  }
  if (kept < hung.length) hung.length = kept;
}

/** Ends a task at `end` and wakes what waited for it. */
function completeTask(run: BenchRun, task: TaskRun, end: Minutes): void {
  const { piece } = task;
  task.end = end;
  task.mending = null;
  const place = run.candidates.indexOf(task);
  if (place >= 0) run.candidates.splice(place, 1);
  for (const look of task.task.looks) run.looks.push(end + look);
  const { hook } = task.task;
  if (hook !== null) {
    piece.hookAt = hook.place;
    piece.hookUntil = openingAfter(hook.until, end);
    if (!run.hung.includes(piece)) run.hung.push(piece);
  }
  piece.tasksLeft--;
  if (piece.tasksLeft === 0) {
    piece.finish = end + piece.piece.cure;
    run.fullUntil = Number.NEGATIVE_INFINITY;
  }
  for (const next of task.prepared.followers) {
    const follower = at(run.tasks, next);
    if (follower.end !== Number.POSITIVE_INFINITY) continue;
    follower.pending--;
    if (follower.pending === 0) becomeCandidate(run, follower);
  }
}

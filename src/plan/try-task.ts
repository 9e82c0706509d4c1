import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { type BenchRun, type PieceRun, putAwayMinutes, type TaskRun } from "./bench-run.ts";
import { clearOfAir } from "./clear-of-air.ts";
import { openingAfter } from "./lag.ts";
import { LOOK, type PlanWindow, SHORTEST_PART, type Wait } from "./problem.ts";
import { tryWindows } from "./try-windows.ts";
import { windowsAhead } from "./windows-ahead.ts";

/** How a task would be worked if begun at a minute; written over by each try, so that trying makes no garbage. */
export interface Trial {
  /** The window chosen of each wait: the first `chosen` of a list that is never cut, as the engine throws away what is. */
  readonly windows: PlanWindow[];
  chosen: number;
  /** Preparation, with the minutes its dust takes to settle. */
  preparation: Minutes;
  setUp: Minutes;
  /** First minute of hands-on on the task itself. */
  start: Minutes;
  end: Minutes;
  /** Minutes of the task still to do after `end`. */
  left: Minutes;
  /** A wait whose windows have all shut. */
  missed: Wait | null;
}

/** A trial to hand to tryTask. */
export function emptyTrial(): Trial {
  return { windows: [], chosen: 0, preparation: 0, setUp: 0, start: 0, end: 0, left: 0, missed: null };
}

/**
 * Tries to begin a task, with its preparation and set-up, at minute `t` of the open session, and writes how into
 * `trial`. A reason that only time takes away puts the task to sleep until then.
 *
 * @returns `t` when it can; else the first later minute that is worth another try; Infinity: the clock alone will
 *   not bring one
 */
export function tryTask(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  trial.missed = null;
  let ready = whenFree(run, task, t);
  if (ready > t) return sleep(task, ready);
  ready = roomUnderLimit(run, task, t);
  if (ready > t) return ready;
  ready = tryWindows(run, task, t, trial);
  if (ready > t) return trial.missed === null ? sleep(task, ready) : ready;
  ready = fitSession(run, task, t, trial);
  if (ready === t) ready = clearOfUnfit(task, t, trial);
  if (ready > t) return task.setUp === null ? sleep(task, ready) : ready;
  ready = clearOfLooks(run, t, trial.end);
  if (ready === t) ready = clearOfAir(run, task, t, trial);
  if (ready === t) ready = freeHook(run, task, t, trial);
  if (ready === t) ready = windowsAhead(run, task, t, trial);
  return ready;
}

/** When piece and station are free, in a session that has room for the task. */
function whenFree(run: BenchRun, task: TaskRun, t: Minutes): Minutes {
  return Math.max(t, task.piece.free, task.station?.busyUntil ?? 0, roomTonight(run, task, t));
}

/** Whether a task would be found to wait for the limit alone, as others were since a piece was last finished. */
export function isKeptByLimit(run: BenchRun, task: TaskRun, t: Minutes): boolean {
  return run.fullUntil > t && isUnderLimit(task) && whenFree(run, task, t) === t;
}

function isUnderLimit({ piece }: TaskRun): boolean {
  return !piece.begun && piece.piece.underLimit;
}

/** Nothing but time helps: until then it is not tried again. */
function sleep(task: TaskRun, until: Minutes): Minutes {
  task.wake = until;
  return until;
}

/** A task that would not be done by closing even if nothing came before or after it waits for the next session. */
function roomTonight(run: BenchRun, task: TaskRun, t: Minutes): Minutes {
  const { closes } = at(run.prepared.problem.sessions, run.session);
  return t + task.rest <= closes || task.task.mayStop ? t : nextOpening(run);
}

function nextOpening({ prepared, session }: BenchRun): Minutes {
  return prepared.problem.sessions[session + 1]?.opens ?? Number.POSITIVE_INFINITY;
}

/** A piece under the limit is begun only while fewer than the limit are out. */
function roomUnderLimit(run: BenchRun, task: TaskRun, t: Minutes): Minutes {
  const { mostOut } = run.prepared.problem;
  if (mostOut === null || !isUnderLimit(task)) return t;
  // Asked of each piece still to be begun, at every minute that is tried.
  if (run.fullUntil > t) return run.fullUntil;
  let out = 0;
  let next = Number.POSITIVE_INFINITY;
  for (const { begun, finish } of run.pieces) {
    if (!begun || (finish ?? Number.POSITIVE_INFINITY) <= t) continue;
    out++;
    next = Math.min(next, finish ?? Number.POSITIVE_INFINITY);
  }
  if (out < mostOut) return t;
  run.fullUntil = next;
  return next;
}

/** Finds the end inside the open session, with looks and putting away; a task that may stop does a part of it. */
function fitSession(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  const { closes } = at(run.prepared.problem.sessions, run.session);
  const shuts = closes - putAwayMinutes(run, task.station, task.setUp?.putAway ?? 0);
  trial.end = trial.start + task.rest;
  trial.left = 0;
  if (trial.end <= shuts && trial.end + task.prepared.watched <= closes) return t;
  const part = Math.min(shuts - trial.start, task.rest - SHORTEST_PART);
  if (task.task.mayStop && task.mending === null && !task.again && part >= SHORTEST_PART) {
    trial.end = trial.start + part;
    trial.left = task.rest - part;
    return t;
  }
  return nextOpening(run);
}

/** No minute of hands-on in air that is unfit for it. */
function clearOfUnfit({ task }: TaskRun, t: Minutes, { start, end }: Trial): Minutes {
  const span = task.unfit?.find(([from, until]) => from < end && until > start);
  return span === undefined ? t : t + span[1] - start;
}

/** Looks at coats laid before need a free pair of hands at their minute. */
function clearOfLooks(run: BenchRun, t: Minutes, end: Minutes): Minutes {
  let clear = t;
  for (const look of run.looks) {
    if (look >= end || look + LOOK <= t) continue;
    let busy = 1;
    for (const until of run.hands) if (until > look) busy++;
    if (busy >= run.hands.length) clear = Math.max(clear, look + LOOK);
  }
  return clear;
}

/** The hook it will hang on must be free by its end; its own is free once it is in hand. */
function freeHook(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  const { hook } = task.task;
  if (hook === null || trial.left > 0 || openingAfter(hook.until, trial.end) <= trial.end) return t;
  const { hung } = run;
  let taken = 0;
  let next = Number.POSITIVE_INFINITY;
  for (let index = 0; index < hung.length; index++) {
    const piece = hung[index] as PieceRun;
    if (piece === task.piece || piece.hookAt !== hook.place || piece.hookUntil <= trial.end) continue;
    taken++;
    next = Math.min(next, piece.hookUntil);
  }
  return taken < at(run.prepared.problem.places, hook.place).hooks ? t : t + next - trial.end;
}

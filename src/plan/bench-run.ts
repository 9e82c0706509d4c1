import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { openingAfter, shutAfter } from "./lag.ts";
import { listOf } from "./list-of.ts";
import type { Visit } from "./plan.ts";
import type { Prepared, PreparedTask } from "./prepare-dispatch.ts";
import { LOOK, type PlanPiece, type PlanSetUp, type Standing, type Task } from "./problem.ts";

/** Tasks that are not to be begun before a minute: what "leave it for tonight" means to a run. */
export interface Leave {
  readonly tasks: readonly number[];
  readonly until: Minutes;
}

/** The bench as it is played forward by one run of dispatch. */
export interface BenchRun {
  readonly prepared: Prepared;
  /** Number of the session that is open, or opens next. */
  session: number;
  readonly tasks: readonly TaskRun[];
  readonly pieces: readonly PieceRun[];
  /** All pieces that hang on hooks, and some that hung there. */
  readonly hung: PieceRun[];
  readonly stations: readonly StationRun[];
  /** Tasks that wait for nothing but time and room. */
  readonly candidates: TaskRun[];
  /** By pair of hands: busy until then. */
  readonly hands: Minutes[];
  /** Minutes at which a pair of hands must be free; those of sessions past are dropped. */
  looks: Minutes[];
  air: InTheAir[];
  /** Until then as many pieces are out as may be, as far as was found; -Infinity: it is to be looked for. */
  fullUntil: Minutes;
  readonly visits: Visit[];
}

export interface TaskRun {
  readonly index: number;
  readonly task: Task;
  readonly prepared: PreparedTask;
  readonly piece: PieceRun;
  readonly station: StationRun | null;
  readonly setUp: PlanSetUp | null;
  /** Not to be looked at before. */
  wake: Minutes;
  /** When its set-up must be begun for the window that is next; Infinity: any time; -Infinity: all have shut. */
  latest: Minutes;
  /** How many of those it waits for are to do. */
  pending: number;
  /** Minutes still to do. */
  rest: Minutes;
  /** A part of it was done, so its windows no longer matter. */
  split: boolean;
  /** Minutes of levelling asked for by a window missed; null: none. */
  mending: Minutes | null;
  /** How often it was mended. */
  mends: number;
  /** A mend before it undid what was done of it. */
  again: boolean;
  /** Its newest hands-on end; Infinity: none yet. */
  end: Minutes;
}

export interface PieceRun {
  readonly piece: PlanPiece;
  begun: boolean;
  /** In hand until then. */
  free: Minutes;
  tasksLeft: number;
  /** Hands-on minutes still to do. */
  handsLeft: Minutes;
  finish: Minutes | null;
  /** Place where it hangs until `hookUntil`; -1: on no hook. */
  hookAt: number;
  hookUntil: Minutes;
}

export interface StationRun {
  /** "any": whatever the first task there needs. */
  standing: Standing | null | "any";
  busyUntil: Minutes;
  /** Minutes of putting away still to come before this bench session shuts. */
  owes: Minutes;
}

/** One emission in the room. */
export interface InTheAir {
  readonly what: number;
  readonly from: Minutes;
  readonly until: Minutes;
}

/** The bench at minute 0. */
export function beginRun(prepared: Prepared, leave: Leave | null): BenchRun {
  const { problem } = prepared;
  const pieces = listOf(problem.pieces, beginPiece);
  const stations = listOf(problem.stations, ({ standing }): StationRun => {
    const setUp = standing === null || standing === "any" ? null : at(problem.setUps, standing.setUp);
    return { standing, busyUntil: 0, owes: setUp?.putAway ?? 0 };
  });
  const tasks = listOf(problem.tasks, (task, index): TaskRun => {
    const piece = at(pieces, task.piece);
    return {
      index,
      task,
      prepared: at(prepared.tasks, index),
      piece,
      station: task.station === null ? null : at(stations, task.station),
      setUp: task.setUp === null ? null : at(problem.setUps, task.setUp),
      wake: Math.max(task.release ?? Number.POSITIVE_INFINITY, piece.piece.release),
      latest: Number.POSITIVE_INFINITY,
      pending: 0,
      rest: task.minutes,
      split: false,
      mending: null,
      mends: 0,
      again: false,
      end: task.ended ?? Number.POSITIVE_INFINITY,
    };
  });
  for (const index of leave?.tasks ?? []) {
    const task = at(tasks, index);
    task.wake = Math.max(task.wake, leave?.until ?? 0);
  }
  const run: BenchRun = {
    prepared,
    session: 0,
    tasks,
    pieces,
    hung: pieces.filter(({ hookAt }) => hookAt >= 0),
    stations,
    candidates: [],
    hands: new Array<Minutes>(Math.max(1, problem.hands)).fill(0),
    looks: [...problem.looks],
    air: listOf(problem.air, ({ what, until }) => ({ what, from: 0, until })),
    fullUntil: Number.NEGATIVE_INFINITY,
    visits: [],
  };
  countWork(run);
  return run;
}

function beginPiece(piece: PlanPiece): PieceRun {
  return {
    piece,
    begun: piece.begun,
    free: 0,
    tasksLeft: 0,
    handsLeft: 0,
    finish: null,
    hookAt: piece.hook?.place ?? -1,
    hookUntil: piece.hook?.until ?? 0,
  };
}

/** Counts what each task waits for and what each piece has still to do, and finds the first candidates. */
function countWork(run: BenchRun): void {
  for (const task of run.tasks) {
    if (task.task.ended !== null) continue;
    task.piece.tasksLeft++;
    task.piece.handsLeft += task.rest;
    for (const wait of task.task.waits) if (at(run.tasks, wait.on).task.ended === null) task.pending++;
    if (task.pending === 0) becomeCandidate(run, task);
  }
}

/** Adds a task that waits for nothing but time, unless no time will ever do. */
export function becomeCandidate(run: BenchRun, task: TaskRun): void {
  if (task.task.release === null || task.prepared.tooLong) return;
  const setUp = task.setUp?.minutes ?? 0;
  if (task.mending === null) {
    for (const wait of task.task.waits) {
      const { end } = at(run.tasks, wait.on);
      task.wake = Math.max(task.wake, openingAfter(at(wait.windows, 0).opens, end) - setUp);
    }
  }
  findLatest(run, task, 0);
  run.candidates.push(task);
}

/** Finds by when a task must be begun for the windows that are not too late at `t`. */
export function findLatest(run: BenchRun, task: TaskRun, t: Minutes): void {
  task.latest = Number.POSITIVE_INFINITY;
  if (task.split || task.mending !== null) return;
  const setUp = task.setUp?.minutes ?? 0;
  for (const wait of task.task.waits) {
    const { end } = at(run.tasks, wait.on);
    let latest = Number.NEGATIVE_INFINITY;
    for (const { shuts } of wait.windows) {
      latest = shutAfter(shuts, end) - setUp;
      if (latest >= t) break;
      latest = Number.NEGATIVE_INFINITY;
    }
    task.latest = Math.min(task.latest, latest);
  }
}

/** Minutes of putting away that this bench session owes once `station` comes to owe `own`. */
export function putAwayMinutes(run: BenchRun, station: StationRun | null, own: Minutes): Minutes {
  const { stations } = run;
  let sum = 0;
  for (let index = 0; index < stations.length; index++) {
    const each = stations[index] as StationRun;
    sum += each === station ? Math.max(each.owes, own) : each.owes;
  }
  return sum;
}

/**
 * Moves into the session of minute `t`, or the next one. At the end of each session all is put away that is to be.
 *
 * @returns the first minute from `t` on in which the bench is open; Infinity: it never opens again
 */
export function enterSession(run: BenchRun, t: Minutes): Minutes {
  const { sessions, setUps } = run.prepared.problem;
  for (;;) {
    const session = sessions[run.session];
    if (session === undefined) return Number.POSITIVE_INFINITY;
    if (t < session.closes) return Math.max(t, session.opens);
    run.session++;
    run.looks = run.looks.filter((look) => look + LOOK > t);
    for (const station of run.stations) {
      station.owes = 0;
      const { standing } = station;
      if (standing === null || standing === "any" || at(setUps, standing.setUp).putAway === 0) continue;
      station.standing = null;
    }
  }
}

import { at } from "../plan/at.ts";
import type { Visit } from "../plan/plan.ts";
import type { PlanPiece, Problem, Standing, Task } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";

/**
 * A shop while it is played forward, in minutes from where it began. It is written over as time goes on: a year is
 * tens of thousands of acts.
 */
export interface PlayState {
  /** Its hours, stations, set-ups and places. `horizon` is how far ahead is planned from any minute. */
  readonly shop: Problem;
  now: Minutes;
  /** Number of the session that is open, or opens next. */
  session: number;
  readonly pieces: PlayPiece[];
  /** Of all pieces, in order: their numbers run on through the pieces. */
  readonly tasks: PlayTask[];
  /** Those with work to do, in order of number. */
  unfinished: PlayPiece[];
  /** By station. */
  readonly standing: PlayStanding[];
  air: { readonly what: number; readonly until: Minutes }[];
  looks: Minutes[];
  /** What a pair of hands is on. */
  inHand: readonly InHand[];
  /** All that was worked, or is begun. */
  readonly visits: Visit[];
}

export type PlayStanding = Standing | null | "any";

export interface PlayPiece {
  readonly number: number;
  readonly piece: PlanPiece;
  readonly tasks: readonly PlayTask[];
  tasksLeft: number;
  /** First hands-on, set-up included; null: not begun (or, with `piece.begun`, before minute 0). */
  began: Minutes | null;
  /** When it counts as finished, its last cure included. */
  finish: Minutes | null;
  /** `expected`: when by the sheet it comes off; `until`: when it does. */
  hook: { readonly place: number; readonly expected: Minutes; readonly until: Minutes } | null;
}

export interface InHand {
  readonly task: PlayTask;
  readonly piece: PlayPiece;
  /** When it would end if it went as thought. */
  readonly expected: Minutes;
  readonly end: Minutes;
  /** Minutes of it then still to do. */
  readonly left: Minutes;
}

export interface PlayTask {
  readonly index: number;
  /** Waits name tasks by `index`. */
  readonly task: Task;
  /** Its place among the tasks of its piece. */
  readonly step: number;
  readonly followers: PlayTask[];
  /** Minutes still to do, as far as is known. */
  rest: Minutes;
  /** A part of it is done, so its windows no longer matter. */
  split: boolean;
  /** A mend undid what had been done of it. */
  again: boolean;
  /** How often it was worked to its end. */
  turn: number;
  end: Minutes | null;
  /** How the wait after its newest end goes, against the sheet's. */
  wait: number;
}

/**
 * A shop at minute 0 of a problem.
 *
 * @throws RangeError when a task waits for one of another piece, or the tasks of a piece do not stand together
 */
export function beginPlay(problem: Problem): PlayState {
  const state: PlayState = {
    shop: problem,
    now: 0,
    session: 0,
    pieces: [],
    tasks: [],
    unfinished: [],
    standing: problem.stations.map(({ standing }) => standing),
    air: [...problem.air],
    looks: [...problem.looks],
    inHand: [],
    visits: [],
  };
  for (const [number, piece] of problem.pieces.entries()) {
    addPiece(
      state,
      piece,
      problem.tasks.filter((task) => task.piece === number),
    );
  }
  return state;
}

/** Puts a piece under the others, with its tasks; their waits name tasks by their number among all. */
export function addPiece(state: PlayState, piece: PlanPiece, tasks: readonly Task[]): void {
  const first = state.tasks.length;
  const own = tasks.map(
    (task, step): PlayTask => ({
      index: first + step,
      task,
      step,
      followers: [],
      rest: task.minutes,
      split: false,
      again: false,
      turn: task.ended === null ? 0 : 1,
      end: task.ended,
      wait: 1,
    }),
  );
  for (const task of own) {
    for (const { on } of task.task.waits) at(own, on - first).followers.push(task);
  }
  const tasksLeft = own.filter(({ end }) => end === null).length;
  const added: PlayPiece = {
    number: state.pieces.length,
    piece,
    tasks: own,
    tasksLeft,
    began: null,
    finish: null,
    hook: piece.hook === null ? null : { ...piece.hook, expected: piece.hook.until },
  };
  state.pieces.push(added);
  state.tasks.push(...own);
  if (tasksLeft > 0) state.unfinished.push(added);
}

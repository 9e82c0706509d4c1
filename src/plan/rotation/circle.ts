import type { Minutes } from "../../time/instant.ts";
import type { UnfitSpan } from "../problem.ts";

/**
 * Work that comes round: every task is done once each `period`, for ever, on one piece after the other. In the terms of
 * the field: a cyclic scheduling problem with minimal and maximal time lags, disjunctive and cumulative resources, a
 * calendar and sequence-dependent set-ups, all of them round the circle. Plain data in whole minutes; rotation files,
 * hoist lines and processes enter by this same door.
 *
 * A task has a minute of the circle (0 to before `period`), the same each time, and starts `minute + turn x period`
 * after minute 0 of the turn in which its piece was begun.
 */
export interface Circle {
  readonly period: Minutes;
  /**
   * Above `period`: the question is whether any period from that one to this has a rotation. It can only be answered
   * by no: what is found is none. Left out: `period` alone.
   */
  readonly longestPeriod?: Minutes;
  /** Bench hours in the circle, in order and apart, none across minute 0. Work with its set-up lies inside one. */
  readonly sessions: readonly { readonly opens: Minutes; readonly closes: Minutes }[];
  /** Pairs of hands; each task takes one, with its set-up. */
  readonly hands: number;
  readonly tasks: readonly CircleTask[];
  readonly lags: readonly CircleLag[];
  /**
   * `apart[u][v]`: least minutes from the start of task u to the start of v when v comes after u, round the circle;
   * null: the two do not hinder each other.
   */
  readonly apart: readonly (readonly (Minutes | null)[])[];
  /** The same to the start of v's own set-up, where it is made. */
  readonly apartFromSetUp: readonly (readonly (Minutes | null)[])[];
  readonly setUps: readonly CircleSetUp[];
  readonly holds: readonly CircleHold[];
  /** How many of each kind of hold there are room for at once. */
  readonly room: readonly number[];
  /** What is measured: the pieces of one turn, each from its first start to its end. */
  readonly pieces: readonly CirclePiece[];
}

export interface CircleTask {
  readonly minutes: Minutes;
  /** Minutes from its start on that must lie in the same session: its own, and until the last look at it. */
  readonly stays: Minutes;
  readonly setUp: number | null;
  /** Stretches of the circle, in order and apart, in which no minute of it may lie, its set-up may. Left out: none. */
  readonly unfit?: readonly UnfitSpan[];
  /** The one minute of the circle at which it starts, where that is settled already. */
  readonly fixed: Minutes | null;
  /** Settled already: its set-up is made for it; the session it lies in; the tasks it comes before on the circle. */
  readonly made?: true;
  readonly session?: number;
  readonly before?: readonly number[];
}

/**
 * Start of `to` less start of `from`, on one piece, is from `least` to `most` (null: any time after), and in none of the
 * gaps between two windows.
 */
export interface CircleLag {
  readonly from: number;
  readonly to: number;
  readonly least: Minutes;
  readonly most: Minutes | null;
  /** In order and apart: more than `shuts` and less than `opens` it may not be. Left out: none. */
  readonly gaps?: readonly CircleGap[];
}

interface CircleGap {
  readonly shuts: Minutes;
  readonly opens: Minutes;
}

/** As in the planning problem: what stands ready at a station for the tasks that name it. */
export interface CircleSetUp {
  readonly station: number;
  readonly minutes: Minutes;
  readonly keeps:
    | { readonly way: "heat"; readonly minutes: Minutes }
    | { readonly way: "mix"; readonly minutes: Minutes; readonly serves: number }
    | { readonly way: "load" };
  readonly putAway: Minutes;
  /** Tasks that may not come between two that share it: they keep apart from what it gives off while it stands. */
  readonly apartFrom: readonly number[];
}

/**
 * Room taken from `after` minutes past the start of a task, for `minutes`, or until task `freedBy` of the same piece
 * starts (null: none does).
 */
export interface CircleHold {
  readonly of: number;
  readonly task: number;
  readonly after: Minutes;
  readonly minutes: Minutes;
  readonly freedBy: number | null;
}

/** The span of a piece is the latest start of `ends` with its minutes, less the earliest start of `begins`. */
export interface CirclePiece {
  readonly begins: readonly number[];
  readonly ends: readonly { readonly task: number; readonly minutes: Minutes }[];
}

import type { Instant, Minutes } from "../time/instant.ts";

/**
 * The bench's planning problem as plain data, in whole minutes from `origin`: sessions are absolute, so clock changes
 * have vanished. Real shops and published instances enter by this same door; dispatch, checker, search and rotation
 * read nothing else. Things are named by their place in the lists here.
 *
 * In the terms of the field: project scheduling with minimal and maximal time lags, renewable resources (hands,
 * stations, hooks), a calendar, sequence-dependent set-ups, and exclusions between what tasks give off.
 */
export interface Problem {
  /** Minute 0: now. */
  readonly origin: Instant;
  /** From this minute on nothing is planned. */
  readonly horizon: Minutes;
  /** Bench hours, in order and apart. The first may have been open before minute 0 (a negative opening). */
  readonly sessions: readonly PlanSession[];
  /** Pairs of hands. Each visit takes one, with its preparation and set-up. */
  readonly hands: number;
  readonly stations: readonly PlanStation[];
  readonly setUps: readonly PlanSetUp[];
  readonly places: readonly PlanPlace[];
  /** Numbers of two emissions that must not be in the room together. */
  readonly apart: readonly (readonly [number, number])[];
  /** What is in the air at minute 0, and until when. */
  readonly air: readonly { readonly what: number; readonly until: Minutes }[];
  /** Minutes at which a pair of hands must be free for a look at coats already laid. */
  readonly looks: readonly Minutes[];
  /** How many pieces may be out before another under the limit is begun; null: any number. */
  readonly mostOut: number | null;
  readonly prices: Prices;
  readonly pieces: readonly PlanPiece[];
  readonly tasks: readonly Task[];
}

/** What a minute costs: late (times the piece's weight), from release to finish, of preparation and mending, of setting up. */
export interface Prices {
  readonly late: number;
  readonly flow: number;
  readonly amends: number;
  readonly setUp: number;
}

export interface PlanSession {
  readonly opens: Minutes;
  readonly closes: Minutes;
}

/** One task at a time. `standing`: what is set up at minute 0; "any": whatever the first task there needs. */
export interface PlanStation {
  readonly name: string;
  readonly standing: Standing | null | "any";
}

export interface Standing {
  readonly setUp: number;
  /** When it is (or was) ready. */
  readonly ready: Minutes;
  /** End of its last use; null: not used yet. */
  readonly lastUsed: Minutes | null;
  readonly served: number;
}

/**
 * Work that must come directly before a task unless what it makes still stands at the station. Two tasks share it
 * when they name the same one.
 *
 * - heat: good for a start at most `minutes` after its last use (or after it was ready)
 * - mix: good for a task that ends at most `minutes` after it was ready, for at most `serves` tasks
 * - load: good until another set-up at the station
 *
 * One that has `putAway` minutes is put away before the bench shuts, and stands no more.
 */
export interface PlanSetUp {
  readonly station: number;
  readonly minutes: Minutes;
  readonly keeps:
    | { readonly way: "heat"; readonly minutes: Minutes }
    | { readonly way: "mix"; readonly minutes: Minutes; readonly serves: number }
    | { readonly way: "load" };
  readonly putAway: Minutes;
  /** Emissions from the beginning of setting up until it was put away after its last use. */
  readonly gives: readonly number[];
}

export interface PlanPlace {
  readonly name: string;
  readonly hooks: number;
}

export interface PlanPiece {
  /** No work, set-up included, before it. */
  readonly release: Minutes;
  readonly due: Minutes | null;
  /** What a minute of lateness costs, 1 is usual. */
  readonly weight: number;
  /** Minutes from its last hands-on end until it counts as finished. */
  readonly cure: Minutes;
  /** Out at minute 0. */
  readonly begun: boolean;
  /** Begun only while fewer than `mostOut` are out. */
  readonly underLimit: boolean;
  /** The hook it hangs on at minute 0. */
  readonly hook: { readonly place: number; readonly until: Minutes } | null;
}

/** Hands-on work on one piece. Tasks come in an order in which every task follows those it waits for. */
export interface Task {
  readonly piece: number;
  /** What is still to do of it, at least 1 unless it has `ended`. */
  readonly minutes: Minutes;
  /** Null: anywhere. */
  readonly station: number | null;
  readonly setUp: number | null;
  /** Not before; null: nobody knows when (a measurement is missing), so neither it nor what follows is planned. */
  readonly release: Minutes | null;
  readonly waits: readonly Wait[];
  /**
   * Stretches in which no minute of its own hands-on may lie, its set-up and preparation may: nights too cold or damp for
   * the coat it lays. In order and apart; missing: none.
   */
  readonly unfit?: readonly UnfitSpan[];
  /** May be split between sessions, in parts of 15 minutes or more. */
  readonly mayStop: boolean;
  /** A hook it takes from its end until then, or until the piece is worked again, unless it `stays` taken. */
  readonly hook: { readonly place: number; readonly until: Lag; readonly stays?: true } | null;
  readonly gives: readonly Gives[];
  /** Short attended checks, in minutes after its end, in the same session. */
  readonly looks: readonly Minutes[];
  /** In hand at minute 0: goes on at once, whatever the hours. */
  readonly running: boolean;
  /** Done at this minute, at most 0: only what waits for it, or a mend of it, is still to plan. Null: to do. */
  readonly ended: Minutes | null;
}

/** From a minute until before another. */
export type UnfitSpan = readonly [from: Minutes, until: Minutes];

/** The task may begin in one of the windows after the end of task `on` (a plain least wait is one that never shuts). */
export interface Wait {
  readonly on: number;
  /** At least one, in order and apart. */
  readonly windows: readonly PlanWindow[];
  /** When all have shut `on` is worked again, with so many minutes of levelling more; null: never, the shut is hard. */
  readonly mend: Minutes | null;
}

/** `preparation`: done from the opening on, in the same session, before the task and its set-up. */
export interface PlanWindow {
  readonly opens: Lag;
  readonly shuts: Lag | null;
  readonly preparation: Preparing | null;
}

export interface Preparing {
  readonly minutes: Minutes;
  /** Minutes between its end and the task (its set-up included), for dust to settle. */
  readonly settles: Minutes;
  readonly gives: readonly Gives[];
}

/** An emission from the start of hands-on (of its set-up, where said) until `lasts` minutes after its end. */
export interface Gives {
  readonly what: number;
  readonly lasts: Minutes;
  readonly fromSetUp: boolean;
}

/** A wait: so many minutes, or in air that changes, by when it begins. */
export type Lag = Minutes | LagTable;

/**
 * `reached[k]` is the minute that a wait begun at minute `k * every` ends; never decreasing; null: not within the
 * table. A wait begun between two entries ends at the earlier one for a shut and at the later one for anything else.
 */
export interface LagTable {
  readonly every: Minutes;
  readonly reached: readonly (Minutes | null)[];
  /** `reached[entry]`, where not all of them need be known for it; missing: they are. */
  endAt?(entry: number): Minutes | null;
}

/** Shortest part of a task that may be split, in minutes. */
export const SHORTEST_PART: Minutes = 15;

/** How long a look takes, in minutes. */
export const LOOK: Minutes = 1;

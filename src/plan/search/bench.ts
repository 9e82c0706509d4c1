import type { Minutes } from "../../time/instant.ts";
import type { Gives, Lag, Preparing, Prices, UnfitSpan } from "../problem.ts";
import type { Calendar } from "./calendar.ts";

/** What can be decided about a task beside its place in the order. */
export const DECIDED = {
  nothing: 0,
  /** It begins while the set-up of the use before it still stands, if that use has to end later for it. */
  shares: 1,
  /** What it needs is set up anew though something stands. */
  fresh: 2,
  /** It begins in a window that asks for no preparation, if what it waits for has to end later for it. */
  firm: 3,
} as const;

/**
 * The problem made ready for many plays, and the bench as the play at hand has left it. Everything that a play changes
 * is a small whole number in a field of one of these records, and the records hold one another: no list is searched
 * for what belongs together. Where a play goes through a list it counts places: the engine compiles such loops sooner,
 * and a search may have no more than a second.
 */
export interface Bench {
  readonly calendar: Calendar;
  readonly horizon: Minutes;
  readonly prices: Prices;
  readonly mostOut: number | null;
  readonly tasks: readonly BenchTask[];
  readonly pieces: readonly BenchPiece[];
  readonly stations: readonly BenchStation[];
  readonly places: readonly BenchPlace[];
  readonly slots: readonly BenchSlot[];
  readonly setUps: readonly BenchSetUp[];
  /** By emission: those that must keep apart from it. */
  readonly apart: readonly (readonly number[])[];
  /** By emission: until when something is in the room that must keep apart from it. */
  readonly clearAt: Minutes[];
  /** By kind of air of one task and of another: for how long the one, once done, keeps the other out of the room. */
  readonly keepsOut: Int32Array;
  /** How many kinds of air there are. */
  readonly airs: number;
  /** A task for each need of clear air that there is. */
  readonly needs: readonly BenchTask[];
  /** By pair of hands: busy until then. */
  readonly hands: Minutes[];
  /** Minutes at which a pair of hands must be free, as they came to be asked for. */
  readonly looks: Minutes[];
  /** How many of `looks` were asked for before the play. */
  readonly looksBefore: number;
  /** A look comes at most so long after the begin of its task. */
  readonly longestLook: Minutes;
  /** Something is put away before the bench shuts. */
  readonly putsAway: boolean;
  /** A set-up gives something off for as long as it stands. */
  readonly setUpsGive: boolean;
  /** When the newest task was begun: the play never goes back. */
  clock: Minutes;
  /** How many of `looks` count. */
  looksAsked: number;
  /** What the plan costs at least: pieces as early as they still can be, and all set-ups, preparations and mends so far. */
  cost: number;
  /** What of it is set-ups, preparations and mends. */
  extra: number;
  /** After a failed try: the wait whose last window had shut, and by how much. */
  missed: BenchWait | null;
  missedBy: Minutes;
}

/** A task: what the problem says of it, how it was played, and what the search has decided about it. */
export interface BenchTask {
  readonly index: number;
  readonly piece: BenchPiece;
  readonly station: BenchStation | null;
  readonly setUp: BenchSetUp | null;
  readonly minutes: Minutes;
  /** Task and piece are both released; NEVER: it cannot be planned. */
  release: Minutes;
  readonly mayStop: boolean;
  /** None of its hands-on lies in one of these. */
  readonly unfit: readonly UnfitSpan[];
  readonly running: boolean;
  /** When it ended before the play; null: to do. */
  readonly ended: Minutes | null;
  readonly looks: readonly Minutes[];
  /** Its longest look, with the look itself. */
  readonly watched: Minutes;
  readonly waits: readonly BenchWait[];
  /** Waits of other tasks on it. */
  readonly awaited: readonly BenchWait[];
  /** Those that shut for good. */
  readonly strict: readonly BenchWait[];
  /** Every wait has one window, with no preparation: it stands in `windows` from the beginning. */
  plain: boolean;
  /** Some window it waits for shuts. */
  shuts: boolean;
  readonly hook: BenchHook | null;
  /** What it and its set-up put into the room, of that which something must keep apart from. */
  readonly gives: readonly Gives[];
  /** What it gives off from its set-up on, and from its hands-on on. */
  readonly fills: readonly number[];
  readonly fillsLater: readonly number[];
  /** Tasks with the same number give off the same. */
  readonly airKind: number;
  /** Tasks with the same number need the air to be clear of the same, as long before their hands-on. */
  need: number;
  /** For how long after its end it keeps others out of the room. */
  readonly holds: Minutes;
  /** Least minutes from its end until its piece is finished, closed hours not counted. */
  tail: Minutes;
  /** By session in which it ends: when its piece is finished at the earliest. */
  leastFinish: Int32Array;
  /** Minutes from its end until its piece is finished if worked as if alone, shut hours counted: the middle of the first sessions. */
  usualRest: Minutes;
  /** Logarithm of that and a day: how much is to do of it, in times. */
  restLog: number;

  /** As played. The hands are taken from `begin` (preparation, then set-up) to `end`. */
  begin: Minutes;
  setUpMinutes: Minutes;
  start: Minutes;
  end: Minutes;
  /** Minutes that did not fit into the session it was begun in. */
  left: Minutes;
  /** The window used of each wait. */
  readonly windows: BenchWindow[];
  /** Minutes still to do, once a part is done. */
  rest: Minutes;
  /** A part of it was done, so its windows no longer matter. */
  split: boolean;
  /** Set-up, start and end of each part of a task that was split. */
  readonly parts: Minutes[];
  /** Its place in the order that is played. */
  position: number;

  /** Decided: it is to end no earlier, so that a window after it is met, or other work goes first. */
  lifted: Minutes;
  /** Decided about it: one of DECIDED. */
  decided: number;
}

/** What two tasks wait for between them. Among them is the sharing of a set-up, made up while playing. */
export interface BenchWait {
  readonly task: BenchTask;
  readonly on: BenchTask;
  readonly windows: readonly BenchWindow[];
}

export interface BenchWindow {
  readonly opens: Lag;
  readonly shuts: Lag | null;
  readonly preparation: Preparing | null;
  /** Preparation with the minutes its dust takes to settle. */
  readonly lead: Minutes;
}

export interface BenchPiece {
  readonly index: number;
  readonly release: Minutes;
  readonly due: Minutes;
  readonly weight: number;
  /** Its logarithm: how much it weighs, in times. */
  readonly weightLog: number;
  readonly cure: Minutes;
  readonly underLimit: boolean;
  readonly tasks: BenchTask[];
  begun: boolean;
  /** In hand until then. */
  free: Minutes;
  /** How many of its tasks are to do. */
  left: number;
  finish: Minutes;
  /** Its finish at the earliest, as far as it was played. */
  leastFinish: Minutes;
  /** The hook it hangs on and leaves when it is next in hand. */
  hook: BenchSlot | null;
}

export interface BenchStation {
  readonly index: number;
  /** What stands there; null: nothing. */
  standing: BenchSetUp | null;
  /** Whatever the first task there needs. */
  any: boolean;
  ready: Minutes;
  lastUsed: Minutes;
  served: number;
  /** Session in which it was last used. */
  session: number;
  busyUntil: Minutes;
  /** Minutes of putting away to come before that session shuts. */
  owes: Minutes;
  /** The task that made what stands, and the one that used it last; null: they stood before. */
  maker: BenchTask | null;
  user: BenchTask | null;
}

export interface BenchSetUp {
  readonly index: number;
  readonly minutes: Minutes;
  readonly way: "heat" | "mix" | "load";
  readonly keeps: Minutes;
  readonly serves: number;
  readonly putAway: Minutes;
  readonly gives: readonly number[];
}

export interface BenchPlace {
  readonly hooks: number;
  /** At least as many as there are hooks. */
  readonly slots: readonly BenchSlot[];
}

/** One hook, taken until then. */
export interface BenchSlot {
  /** Among the hooks of all places. */
  readonly index: number;
  until: Minutes;
  /** The piece that leaves it when it is next in hand; null: none. */
  piece: BenchPiece | null;
}

export interface BenchHook {
  readonly place: BenchPlace;
  readonly until: Lag;
  readonly stays: boolean;
}

import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import type { AirHour, AirRow, NewAir } from "./air.ts";
import type { ActId, By, JournalEvent, NewEvent, Seq, Tag } from "./event.ts";

/** What an act believed of each tag and station it touches: the newest seq it had seen there (0: none yet). */
export interface Expectation {
  readonly tags: Readonly<Record<Tag, Seq>>;
  readonly stations: Readonly<Record<string, Seq>>;
  /** Given by acts that hand out tag numbers: the next free tag as seen. */
  readonly nextTag?: Tag;
  /** Given by undo and amend, which lean on the whole: the newest seq of all. */
  readonly newest?: Seq;
}

export interface Append {
  readonly events: readonly NewEvent[];
  readonly by: By;
  readonly recorded: Instant;
  readonly expects: Expectation;
  /** Process versions named by the events and perhaps not kept yet. */
  readonly processes: readonly { readonly hash: ProcessHash; readonly definition: ProcessDefinition }[];
}

/** Kept whole, or not at all because someone else was first (read again and decide again). */
export type Appended =
  | { readonly kept: true; readonly act: ActId; readonly newest: Seq }
  | { readonly kept: false };

/** One row per piece, derived: enough to find what a week needs without folding ten years. */
export interface PieceRow {
  readonly tag: Tag;
  /** Begun or waiting to begin, and neither finished, scrapped nor gone. */
  readonly out: boolean;
  readonly name: string;
  readonly process: ProcessHash;
  readonly processName: string;
  readonly taggedAt: Instant;
  readonly finishedAt: Instant | null;
  readonly scrappedAt: Instant | null;
}

/** Hands-on minutes of one step as worked once, to learn from. */
export interface StepTime {
  readonly process: string;
  readonly step: string;
  readonly tag: Tag;
  readonly pass: number;
  readonly minutes: Minutes;
  /** When it was hung: the newest records count. */
  readonly at: Instant;
}

/** What touch tests of one pass say of its coat, as times its sheet's minutes; derived, in the air it hung in. */
export interface CureTest {
  readonly coat: string;
  readonly tag: Tag;
  readonly step: string;
  readonly pass: number;
  readonly least: number;
  /** Null: nothing found it faster. */
  readonly most: number | null;
  /** When it was touched last. */
  readonly at: Instant;
}

/** What the journal keeps beside one piece's events, made by the room above from all its live events. */
export interface PieceSummary {
  readonly row: PieceRow;
  readonly stepTimes: readonly StepTime[];
}

/**
 * Makes the derived rows of one piece. It is given, in seq order, every event of the piece, every `clock` event and
 * what undoes those: all raw, with undone and amended not yet applied.
 *
 * @returns null when no piece is left (its tagging was undone)
 */
export type Summarise = (
  tag: Tag,
  events: readonly JournalEvent[],
  definition: (hash: ProcessHash) => ProcessDefinition,
) => PieceSummary | null;

/** Everything the shop needs for the present: no scan, whatever the age of the journal. */
export interface Reading {
  readonly newest: Seq;
  /** Latest `recorded`, where a clock found wrong is already set right; null: an empty journal. */
  readonly newestRecorded: Instant | null;
  readonly nextTag: Tag;
  /** In seq order. */
  readonly events: readonly JournalEvent[];
  readonly definitions: Readonly<Record<ProcessHash, ProcessDefinition>>;
  /** Events that fit nothing (an unknown kind, a damaged body). */
  readonly setAside: readonly SetAside[];
}

/** A row that no event could be made of: it tells nothing but why, yet acts lean on it as the newest of its piece. */
export interface SetAside {
  readonly seq: Seq;
  readonly tag: Tag | null;
  readonly station: string | null;
  readonly why: string;
}

/**
 * Which pieces a reading is about. Whatever is wanted, a reading holds all that the present needs: pieces that are out
 * or ended within a week, the newest 20 acts that stand and all since, what stands at each station, settings (single
 * days and days away of the last 400 days), and everything off the pieces of the last week. An event comes with all
 * that undoes or amends it.
 */
export type Wanted =
  /** No others. */
  | { readonly of: "out" }
  /** These too, whatever their state, and every piece of the newest act of each. */
  | { readonly of: "tags"; readonly tags: readonly Tag[] }
  /** The pieces these acts touch too, and the acts themselves: to undo or amend an older one. */
  | { readonly of: "acts"; readonly acts: readonly ActId[] }
  /** Every piece with an event dated from `from` to before `to` too; shop-wide events of that span, and its settings. */
  | { readonly of: "span"; readonly from: Instant; readonly to: Instant }
  /** The whole journal: the only reading whose cost grows with its age. */
  | { readonly of: "all" };

/**
 * The plan found last, derived: one row, replaced. It is no event, and what it says is never more than a seed once the
 * journal has gone on: then only its order and starts are of use.
 */
export interface PlanRow {
  /** The newest event it knew. */
  readonly seq: Seq;
  /** What it was made for besides the acts (hours, hands, rules, the process of a new piece), to be compared. */
  readonly settings: string;
  /** The newest reading of the air it knew; 0: none, the air of the coats' sheets. */
  readonly air: Seq;
  readonly seed: number;
  /** How many rounds of search found it. */
  readonly rounds: number;
  /** In order of start. */
  readonly starts: readonly PlannedStart[];
  /** What the plan becomes without some of its work. */
  readonly leaving: Leaving;
}

/** What was found by planning again without rows of work, each put off to the end of one bench session. */
export interface Leaving {
  /** That end; 0: nothing has been found. */
  readonly until: Instant;
  readonly work: readonly LeftRow[];
}

/** The plan without one row of work. */
export interface LeftRow {
  /** What the row is called from one answer to the next. */
  readonly key: string;
  /** Minutes of preparation and mending more. */
  readonly amends: Minutes;
  /** When each piece is finished, tags as in PlannedStart; null: not within the days planned. */
  readonly finish: readonly (readonly [tag: Tag, at: Instant | null])[];
}

/** When one part of one pass of one step of one piece is to be begun; a step split between sessions has several. */
export interface PlannedStart {
  /** Negative: not tagged yet, -1 the first of those. */
  readonly tag: Tag;
  readonly step: string;
  readonly pass: number;
  readonly part: "step" | "preparation" | "mend" | "again";
  /** When hands-on begins, its set-up not counted. */
  readonly start: Instant;
}

/** The one door to where events are kept. Async, so that a shop of several benches can keep it elsewhere later. */
export interface Journal {
  /** False: it can only be read, and keeping an act or readings throws JournalTrouble "read only" or "disk full". */
  readonly canWrite: boolean;
  /** It can only be read because its disk has no room. */
  readonly isFull: boolean;
  /**
   * Writes one act whole and durably, or nothing.
   *
   * @throws Error when the events are not what an act may say (our own mistake); JournalTrouble when they cannot be kept
   */
  append(append: Append): Promise<Appended>;
  read(wanted: Wanted): Promise<Reading>;
  /** Newest `most` hands-on records of a step, newest first. */
  stepTimes(process: string, step: string, most: number): Promise<readonly StepTime[]>;
  /** Rows of pieces tagged, finished or scrapped from `from` to before `to`, by tag. */
  pieces(from: Instant, to: Instant): Promise<readonly PieceRow[]>;
  /** The plan kept; null: none, or one that cannot be read. */
  plan(): Promise<PlanRow | null>;
  /** Keeps a plan in place of the last one. False: the journal has gone on since the event it knew, or cannot be written: nothing is kept. */
  keepPlan(row: PlanRow): Promise<boolean>;
  /** Touch tests from a moment on, oldest first. */
  cureTests(from: Instant): Promise<readonly CureTest[]>;
  /** Keeps the touch tests of some pieces in place of what was kept of them. */
  keepCureTests(tags: readonly Tag[], tests: readonly CureTest[]): Promise<void>;
  /** Keeps readings of the air, all or none, and says how many were new. */
  appendAir(readings: readonly NewAir[], by: By, recorded: Instant): Promise<number>;
  /** Readings that count, dated from `from` to before `to`, by moment, then as they came. */
  air(from: Instant, to: Instant): Promise<readonly AirRow[]>;
  /** The mean air of each hour of the day at each place, over the hours from a moment on. */
  airByHour(from: Instant): Promise<readonly AirHour[]>;
  /** The newest reading's place in its sequence; 0: there is none. */
  newestAir(): Promise<Seq>;
  /** Makes every derived row anew from the events. */
  rebuild(): Promise<void>;
  /** A number that changes when another program (or this one) has appended. Microseconds. */
  version(): number;
  close(): void;
}

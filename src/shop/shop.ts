import type { HangingAir, Move, ShopAir } from "../cure/hanging-air.ts";
import type { ActId, By, EventKind, JournalEvent, SchemePass, Seq, Tag, Touch } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { SetUp, Step } from "../process/step.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import type { CivilDate, Instant, Minutes } from "../time/instant.ts";

/** The shop at one instant: facts only, folded from the journal. What they mean now is asked of step-state.ts. */
export interface Shop {
  readonly newest: Seq;
  readonly newestRecorded: Instant | null;
  readonly nextTag: Tag;
  /** Every piece of the reading, by tag. */
  readonly pieces: ReadonlyMap<Tag, Piece>;
  readonly stations: ReadonlyMap<string, StationState>;
  readonly settings: Settings;
  /** The air of its places; the fold knows of none. */
  readonly air: ShopAir;
  /** Cautions read and ticked, oldest first. */
  readonly ticks: readonly { readonly caution: string; readonly at: Instant }[];
  /** Acts that stand, oldest first, for undo and amend: who, what, which tags and stations. */
  readonly acts: readonly ActRecord[];
  /** Events that fit nothing, each with a sentence; never thrown. */
  readonly setAside: readonly { readonly seq: Seq; readonly why: string }[];
}

export interface ActRecord {
  readonly act: ActId;
  readonly at: Instant;
  readonly by: By;
  readonly tags: readonly Tag[];
  readonly stations: readonly string[];
  readonly kinds: readonly EventKind[];
  readonly events: readonly JournalEvent[];
}

export interface Settings {
  /** IANA name; null until one is settled. */
  readonly zone: string | null;
  /** Null until the maker has said: then ASSUMED_HOURS are taken, and screens say so. */
  readonly hours: BenchHours | null;
  /** Pairs of hands from a date on; none said: one pair. */
  readonly hands: readonly { readonly from: CivilDate; readonly pairs: number }[];
  /** Hooks of each place; a place not named here is never full. */
  readonly places: ReadonlyMap<string, { readonly hooks: number }>;
  readonly aims: readonly {
    readonly from: CivilDate;
    readonly finishedPerWeek: number | null;
    readonly out: number | null;
  }[];
  readonly defaultProcess: string | null;
  /** The air of a day as the maker has said it, by place; null: the shop's own. */
  readonly statedAir: ReadonlyMap<string | null, StatedAir>;
  /** By how many °C a surface must be warmer than the dew point to be coated; null: not said. */
  readonly dewMargin: number | null;
  /** Rooms by name; what is in none of them is in the shop's own room, `OWN_ROOM`. */
  readonly rooms: ReadonlyMap<
    string,
    { readonly airChangesPerHour: number | null; readonly mixingFactor: number | null }
  >;
  /** The room of a station or a place. */
  readonly roomOf: ReadonlyMap<string, string>;
  /** Whether touch tests correct how long a coat is thought to take. */
  readonly touchesCount: boolean;
}

/** Low and high of a day in °C and its humidity in percent, as stated at a moment. */
export interface StatedAir {
  readonly at: Instant;
  readonly low: number;
  readonly high: number;
  readonly humidityPercent: number;
}

/** The room of all that is in no other: most shops have this one alone. */
export const OWN_ROOM = "the shop";

export interface Piece {
  readonly tag: Tag;
  readonly name: string;
  readonly hash: ProcessHash;
  readonly definition: ProcessDefinition;
  /** The process's steps as routed for this piece, in working order. */
  readonly route: readonly Step[];
  /** The definition's coats and those its own route brought. */
  readonly coats: Readonly<Record<string, Coat>>;
  /** As planned, then as sprayed, with passes added while painting. */
  readonly scheme: readonly SchemePass[];
  readonly due: CivilDate | null;
  readonly price: number | null;
  readonly for: string | null;
  readonly weight: number;
  readonly taggedAt: Instant;
  /** First hands-on; null: not begun, and not yet out. */
  readonly begunAt: Instant | null;
  readonly end: PieceEnd | null;
  /** What has been done of each step, by step name; a step never touched is missing. */
  readonly work: ReadonlyMap<string, StepWork>;
  /** The step in hand, else the one left half-done last; null: neither. */
  readonly hand: InHand | null;
  /** Other steps lying half-done, oldest first: only where several steps are open at once. */
  readonly alsoLeft: readonly InHand[];
  /** On which place it hangs; null: on no hook (in hand, on the bench, gone). */
  readonly place: string | null;
  /** Where it hung since when, oldest first, for the air its coats dried in. */
  readonly hungAt: readonly Move[];
  /** The air there; the fold knows of none, hang-in-air.ts gives it. */
  readonly air: HangingAir;
  readonly pace: CurePace;
  readonly measured: ReadonlyMap<
    string,
    { readonly value: number; readonly unit: string; readonly at: Instant }
  >;
  /** Every weighing, oldest first: wood that weighs the same a day later has come to rest. */
  readonly weighed: readonly { readonly grams: number; readonly at: Instant }[];
  readonly mends: readonly {
    readonly at: Instant;
    readonly what: string;
    readonly minutes: Minutes;
    readonly goOnFrom: string;
  }[];
  /** Times a result sent it back. */
  readonly sentBack: readonly {
    readonly at: Instant;
    readonly step: string;
    readonly answer: string;
    readonly to: string;
  }[];
  readonly notes: readonly { readonly at: Instant; readonly text: string }[];
  readonly lastSeq: Seq;
}

/** How coats are known to keep to their sheets. */
interface CurePace {
  /** By coat: how many times its sheet's minutes it has been found to need. */
  readonly factors: ReadonlyMap<string, number>;
  readonly touchesCount: boolean;
}

type PieceEnd =
  | { readonly how: "finished"; readonly at: Instant }
  | {
      readonly how: "scrapped";
      readonly at: Instant;
      readonly finishedAt: Instant | null;
      readonly why: string;
    }
  | {
      readonly how: "sold" | "given" | "kept";
      readonly at: Instant;
      readonly finishedAt: Instant | null;
      readonly price: number | null;
    };

/** One step of one piece. `voided` counts passes that a mend or a result took back: the step is to do again. */
export interface StepWork {
  readonly hangs: readonly Hang[];
  readonly voided: number;
  /** All its passes were hung, and none was taken back since: a colour added to the scheme later does not reopen it. */
  readonly completed: boolean;
  /** The preparation a late window asked for, done for the pass to come; null: none. `minutes` null: not known. */
  readonly prepared: { readonly at: Instant; readonly minutes: Minutes | null } | null;
  /** The piece was sent back to this step, and it was not hung since; null: not so. */
  readonly sentBack: SentBack | null;
}

/** A mend or a result that sends a piece back to a step: no pass of it begins before that moment. */
export interface SentBack {
  readonly at: Instant;
  /** By a mend: the flaw was levelled, so the coat below asks no preparation and its window counts from then. */
  readonly levelled: boolean;
}

/** A pass hung: the moment every wait after it counts from. */
export interface Hang {
  readonly pass: number;
  /** Null: hung without being taken, hands-on unknown. */
  readonly takenAt: Instant | null;
  readonly hungAt: Instant;
  /** Minutes in hand, without the time it was left; a share, perhaps with a fraction, where pieces were worked together; null: unknown. */
  readonly minutes: Minutes | null;
  /** The piece came hung so far: its tagging says so, nothing was seen. Its windows count in no week. */
  readonly came: boolean;
  readonly guessed: boolean;
  readonly colour: string | null;
  readonly flashOff: Minutes | null;
  readonly touches: readonly { readonly at: Instant; readonly found: Touch }[];
  /** Minutes of the preparation that came first (the usual ones where they are not known); null: none was done. */
  readonly preparedFirst: Minutes | null;
}

export interface InHand {
  readonly step: string;
  readonly pass: number;
  readonly part: "step" | "preparation";
  readonly colour: string | null;
  readonly another: boolean;
  /** First taken. */
  readonly since: Instant;
  /** Taken last (after being left); null: it lies half-done now. */
  readonly takenAt: Instant | null;
  /** Put down last; null: never. */
  readonly leftAt: Instant | null;
  /** Minutes in hand before the last take. */
  readonly minutesBefore: Minutes;
  /** Act of the last take: pieces taken in one act are worked together. */
  readonly act: ActId;
  /** How many pieces that act took: the minutes are shared. */
  readonly together: number;
}

/** What stands at a station. */
export interface StationState {
  readonly station: string;
  readonly lastSeq: Seq;
  readonly setUp: StandingSetUp | null;
  /** Last hands-on end here; null: never. */
  readonly lastUsed: Instant | null;
  /** When the set-up before this one was put away or gave way to this one; null: never seen. */
  readonly clearedAt: Instant | null;
}

export interface StandingSetUp {
  readonly what: string;
  readonly begun: Instant | null;
  readonly ready: Instant;
  readonly keeps: SetUp["keeps"];
  /** Of a cup whose keeping is predicted for the air it stands in: minutes by its file. Missing: `keeps` is by the file. */
  readonly keptByFile?: Minutes;
  readonly putAwayMinutes: Minutes;
  readonly givesOff: readonly string[];
  /** Last hands-on end that used it; null: not used yet. */
  readonly lastUsed: Instant | null;
  /** Pieces served since it was made ready. */
  readonly served: number;
  readonly act: ActId;
}

import type { Coat, HandsOn } from "../process/coat.ts";
import type { ProcessHash } from "../process/definition.ts";
import type { SetUp } from "../process/step.ts";
import type { DayHours, WeeklyHours } from "../time/bench-hours.ts";
import type { CivilDate, Instant, Minutes } from "../time/instant.ts";

/** The number on a piece's tag; never reused, not even after an undo. */
export type Tag = number;
/** Place of an event in the journal. Order is by seq, never by time. */
export type Seq = number;
/** An act is named by the seq of its first event. */
export type ActId = Seq;
export type By = "maker" | "demo" | `sensor:${string}`;

/** One colour of a scheme: minutes of painting and of flash-off; null: not said. */
export interface SchemePass {
  readonly colour: string;
  readonly minutes: Minutes | null;
  readonly flashOff: Minutes | null;
}

/** What stands on an event whatever its kind. */
interface Envelope {
  readonly seq: Seq;
  readonly act: ActId;
  /** Version of the body of this kind; older ones are brought up to date on reading. */
  readonly v: number;
  /** When it was so, as the maker says. */
  readonly at: Instant;
  /** When it was written down. */
  readonly recorded: Instant;
  readonly by: By;
  readonly tag: Tag | null;
  /** The station it concerns (a take or hang at it, a set-up of it), for expectations. */
  readonly station: string | null;
  /** How many pieces the same act did the same to, this one included: their minutes are shared equally. 1 off the pieces. */
  readonly together: number;
}

/** Why the maker went on although dryline advised waiting: journalled with the act, shown in the week. */
export interface Override {
  /** Code of the refusal that was overridden, `too early`, `keep apart`. */
  readonly over: string;
  readonly reason: string;
}

/** `preparation` is the work a late window asked for before the step (a scuff). */
export type Part = "step" | "preparation";

/** What an event says. Facts only: what follows from them is computed, never stored. */
export type EventBody =
  | {
      readonly kind: "tagged";
      readonly process: ProcessHash;
      readonly name: string;
      readonly scheme: readonly SchemePass[];
      readonly due: CivilDate | null;
      /** In the shop's own money, smallest unit (pence, cents). */
      readonly price: number | null;
      readonly for: string | null;
      /** A piece that was hanging before dryline came: the step it was last hung from, and since when. */
      readonly hung: { readonly step: string; readonly since: Instant } | null;
    }
  | {
      readonly kind: "changed";
      readonly name?: string;
      readonly scheme?: readonly SchemePass[];
      readonly due?: CivilDate | null;
      readonly price?: number | null;
      readonly for?: string | null;
      /** "this one first": 1 is usual, more is dearer to leave. */
      readonly weight?: number;
    }
  | { readonly kind: "routed"; readonly change: RouteChange; readonly why: string | null }
  | {
      readonly kind: "taken";
      readonly step: string;
      /** 1 for the first time this step is worked; each further colour, or doing again after a mend, adds 1. */
      readonly pass: number;
      readonly part: Part;
      /** The colour of this pass as sprayed; null outside scheme steps. */
      readonly colour: string | null;
      /** The pass is one more than the scheme had. */
      readonly another: boolean;
      readonly overrides: readonly Override[];
    }
  | { readonly kind: "left"; readonly step: string; readonly pass: number; readonly part: Part }
  | {
      readonly kind: "hung";
      readonly step: string;
      readonly pass: number;
      readonly part: Part;
      /** Where it hangs from now on; null: on no hook. */
      readonly place: string | null;
      readonly colour: string | null;
      readonly another: boolean;
      /** Minutes of flash-off the maker gave this pass; null: the scheme's, else the coat's. */
      readonly flashOff: Minutes | null;
      /** Answer of a step with a result. */
      readonly result: string | null;
      /** The time is a guess ("as usual"): nothing is learned from it. */
      readonly guessed: boolean;
      readonly overrides: readonly Override[];
    }
  | {
      readonly kind: "readied";
      /** `do` of the set-up with its colour filled in, `load ochre`. */
      readonly setUp: string;
      /** When it was begun (the pot lit); null: only seen ready. */
      readonly begun: Instant | null;
      /** When it is ready: the pot is hot, the cup is mixed, the brush is loaded. */
      readonly ready: Instant;
      readonly keeps: SetUp["keeps"];
      readonly putAwayMinutes: Minutes;
      /** What it gives off while it stands, `heat`. */
      readonly givesOff: readonly string[];
      readonly overrides: readonly Override[];
    }
  | { readonly kind: "put away" }
  | { readonly kind: "touched"; readonly step: string; readonly pass: number; readonly found: Touch }
  | { readonly kind: "moved"; readonly place: string }
  | { readonly kind: "measured"; readonly what: string; readonly value: number; readonly unit: string }
  | {
      readonly kind: "mended";
      readonly what: string;
      readonly minutes: Minutes;
      /** The step to go on from: it and all that follows are open again. */
      readonly goOnFrom: string;
    }
  | { readonly kind: "scrapped"; readonly why: string }
  | {
      readonly kind: "gone";
      readonly how: "sold" | "given" | "kept";
      readonly price: number | null;
      readonly to: string | null;
    }
  | { readonly kind: "noted"; readonly text: string }
  | { readonly kind: "ticked"; readonly caution: string }
  | { readonly kind: "amended"; readonly target: ActId; readonly time: Instant }
  | { readonly kind: "undone"; readonly target: ActId }
  | { readonly kind: "settled"; readonly setting: Setting }
  /** Events from `since` on (by seq, before this one) were stamped `minutes` too late. */
  | { readonly kind: "clock"; readonly since: Seq; readonly minutes: Minutes };

export type EventKind = EventBody["kind"];

/** tacky: not yet tack-free; dry: at least tack-free; hard: at least dry-hard. */
export type Touch = "tacky" | "dry" | "hard";

/** How one piece's route differs from its process. A put-in or swapped step works like `like`, with another coat if said. */
export type RouteChange =
  | {
      readonly do: "put";
      readonly name: string;
      readonly like: string;
      readonly after: string;
      readonly coat: Coat | null;
      readonly handsOn: HandsOn | null;
    }
  | { readonly do: "skip"; readonly step: string }
  | { readonly do: "swap"; readonly step: string; readonly like: string; readonly coat: Coat | null };

/** What changes an answer, so it lives in the journal: past weeks stay true. */
export type Setting =
  | { readonly of: "hours"; readonly from: CivilDate; readonly weekly: WeeklyHours }
  | { readonly of: "day"; readonly date: CivilDate; readonly hours: readonly DayHours[] | null }
  | { readonly of: "away"; readonly from: CivilDate; readonly to: CivilDate }
  /** Ends days away early, from this date on. */
  | { readonly of: "back"; readonly from: CivilDate }
  | { readonly of: "zone"; readonly name: string }
  | { readonly of: "hands"; readonly from: CivilDate; readonly pairs: number }
  | { readonly of: "place"; readonly name: string; readonly hooks: number | null }
  | {
      readonly of: "aim";
      readonly from: CivilDate;
      readonly finishedPerWeek: number | null;
      readonly out: number | null;
    }
  | { readonly of: "default process"; readonly name: string | null }
  /** The air of a day where none is read: its low and high in °C, its humidity in percent; null: not known again. */
  | {
      readonly of: "air";
      /** Null: the shop's own. */
      readonly place: string | null;
      readonly day: { readonly low: number; readonly high: number; readonly humidityPercent: number } | null;
    }
  /** By how many °C a surface must be warmer than the dew point to be coated. */
  | { readonly of: "dew margin"; readonly celsius: number }
  /** How a room changes its air; null: not known. */
  | {
      readonly of: "room";
      readonly name: string;
      readonly airChangesPerHour: number | null;
      readonly mixingFactor: number | null;
    }
  /** In which room a station or a place is; null: in the shop's own. */
  | { readonly of: "in room"; readonly what: string; readonly room: string | null }
  /** Whether touch tests correct how long a coat is thought to take. */
  | { readonly of: "touches"; readonly count: boolean };

/** An event as it is read. */
export type JournalEvent = Envelope & EventBody;

/** An event as it is handed in: the journal gives seq, act, v, recorded, by and together. */
export type NewEvent = EventBody & {
  readonly at: Instant;
  readonly tag: Tag | null;
  readonly station: string | null;
};

import type { Tag } from "../journal/event.ts";
import type { Preparation, Stage } from "../process/coat.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import type { AirNow, ColdAhead, Hold } from "./plan-shop.ts";

/** What can be worked at one moment, what waits, what is held, what stands ready. Facts; words/ makes the sentences. */
export interface NowAnswer {
  readonly at: Instant;
  /** How the order was found: dispatch at once, or a plan that was searched for. */
  readonly basis: "dispatch" | "plan";
  readonly plan: PlanStanding;
  /** Best first. Every row can be started this minute and fits what is left of the bench session. */
  readonly work: readonly WorkRow[];
  /** In hand now. */
  readonly inHand: readonly HandRow[];
  /** Every piece out that hangs or lies, by tag: the shared clock of the dashboard. */
  readonly waiting: readonly WaitingRow[];
  readonly held: readonly HeldRow[];
  readonly prepared: readonly PreparedRow[];
  readonly bench: BenchNow;
  /** The shop's own air; null: not known. */
  readonly air: AirNow | null;
  /** Coats that hang in air which will be too cold for them before they are dry-hard. */
  readonly cold: readonly ColdAhead[];
}

/** How it stands with the plan that is searched for, while or after dispatch gives its answer at once. */
export interface PlanStanding {
  /**
   * - none: none was ever searched for
   * - kept: the answer is by it
   * - older: than the newest act, so the answer is not by it
   * - unfit: made for other settings than today's, so the answer is not by it either
   * - searching: a worker looks for one, and has none for this moment yet
   * - stopped: the worker ended by itself
   */
  readonly is: "none" | "kept" | "older" | "unfit" | "searching" | "stopped";
  /**
   * By what share of the least possible cost the plan kept may cost more; 0: proven best; null: not known here.
   */
  readonly gap: number | null;
}

/** One row an act: several tags where one melt, cup, colour or coat serves them. */
export interface WorkRow {
  /** Empty for "tag a new one". */
  readonly tags: readonly Tag[];
  /** The piece's name where there is one tag. */
  readonly name: string | null;
  readonly process: string;
  readonly step: string;
  /** `preparation`: the scuff its late window asks for comes first, told by the field `preparation`. */
  readonly part: "step" | "preparation";
  readonly preparation: Preparation | null;
  readonly station: string;
  readonly colour: string | null;
  readonly coat: string | null;
  /** Hands-on for all its tags together, without the set-up. */
  readonly minutes: Minutes;
  /** What must be set up first; minutes 0 when it stands ready. */
  readonly setUp: { readonly what: string; readonly minutes: Minutes; readonly standing: boolean } | null;
  /** When it opened (the latest of its tags). */
  readonly opens: Instant;
  /** The earliest shut of its tags; null: never. */
  readonly shuts: Instant | null;
  /** Shut less the set-up that must come first. */
  readonly beginBy: Instant | null;
  readonly why: Why;
  readonly ifLeft: IfLeft;
  readonly warning: WindowAhead | null;
}

/**
 * Told before a coat is laid: laid now, its window opens and shuts again while the bench cannot use it. "Lay it
 * Monday, or count on a scuff; for a next coat of 8 min today it had to hang by 11:52."
 */
export interface WindowAhead {
  /** Null: it never opens, in the air that is expected. */
  readonly opens: Instant | null;
  readonly shuts: Instant | null;
  /** What the next coat will then ask for; null: only a mend helps. */
  readonly preparation: Preparation | null;
  /** Minutes of the next coat, which has to fit. */
  readonly nextMinutes: Minutes;
  /** By when it had (or has) to hang for the next coat in this bench session; null: not possible in it. */
  readonly hangBy: Instant | null;
  /** Opening of the next session in which it can be laid for a window that is kept; null: none in the horizon. */
  readonly layFrom: Instant | null;
  /** The bench is open in time, but the air is expected to be unfit for the next coat. */
  readonly isAir?: true;
}

export type Why =
  | {
      readonly because:
        | "left half-done"
        | "in the order of finishing"
        | "due"
        | "this one first"
        | "aim"
        /** A new one: nothing else can be begun now. */
        | "nothing else to do";
    }
  | { readonly because: "shuts tonight"; readonly at: Instant }
  | { readonly because: "shuts before the bench opens again"; readonly at: Instant }
  | { readonly because: "set-up keeps"; readonly what: string; readonly until: Instant }
  /** No one reason: the plan begins it then. */
  | { readonly because: "planned"; readonly at: Instant }
  /** Once the coat of a row below is laid it would be held by `what`. */
  | { readonly because: "would be held after"; readonly what: string }
  | { readonly because: "cure starts sooner" };

/** What leaving this row for the rest of the bench session brings, found by planning again without it. */
export interface IfLeft {
  /** The work that will then be asked for first; null: none more than now. */
  readonly preparation: Preparation | null;
  /** From when it is asked for. */
  readonly preparationFrom: Instant | null;
  /** The window shuts for good: a mend from the coat. */
  readonly mend: boolean;
  /** Its tags whose window will have shut, and when each does. */
  readonly shut: readonly { readonly tag: Tag; readonly at: Instant }[];
  /** When the first of its tags would be finished now, and if left; null: not within the horizon, or not found yet. */
  readonly finishNow: Instant | null;
  readonly finishLeft: Instant | null;
  /** What else a plan without it brings; by dispatch nothing of it is told. */
  readonly others: LeftOthers | null;
}

/** What a plan without some work brings besides the finish of its own pieces. */
export interface LeftOthers {
  /** Minutes of preparation and mending more in the whole plan; negative: less. */
  readonly amends: Minutes;
  /** Pieces whose due date would be kept, and is broken if this is left. */
  readonly broken: readonly Tag[];
  /** Minutes by which the other pieces would be finished later, added up, those that gain by it taken off. */
  readonly delay: Minutes;
  /** The other pieces that would be finished later, the most delayed first. */
  readonly later: readonly { readonly tag: Tag; readonly minutes: Minutes }[];
}

export interface HandRow {
  readonly tags: readonly Tag[];
  readonly step: string;
  readonly part: "step" | "preparation";
  readonly station: string;
  /** Taken first; where it lies half-done, put down last. */
  readonly since: Instant;
  readonly usualMinutes: Minutes;
  /** Lies half-done: also among the work for now, where it can be gone on with. */
  readonly left: boolean;
  /** Begun in an earlier bench session and never said done: usual hang, and the latest it can have been. */
  readonly forgotten: { readonly usual: Instant; readonly latest: Instant } | null;
  readonly cautions: readonly string[];
  readonly warning: WindowAhead | null;
}

export interface WaitingRow {
  readonly tag: Tag;
  readonly name: string;
  /** The step it will go on with (the first by opening). */
  readonly step: string;
  /** How far its newest coat is; null: no coat on it. */
  readonly stage: Stage | null;
  readonly progress: number;
  readonly since: Instant | null;
  /** Null with `state` drying: not by the clock, a touch must say so. */
  readonly opens: Instant | null;
  readonly shuts: Instant | null;
  readonly hard: Instant | null;
  readonly state: "drying" | "open" | "shut" | "in hand" | "left" | "not begun";
  /** What drying waits for, where the clock alone does not say. */
  readonly because: "tacky" | "feel first" | "air" | null;
  readonly place: string | null;
  /** Opening and shut under the other end of a forgotten step: "both ends of its window". */
  readonly otherEnd: { readonly opens: Instant | null; readonly shuts: Instant | null } | null;
}

export interface HeldRow {
  readonly tags: readonly Tag[];
  readonly name: string | null;
  readonly step: string;
  readonly minutes: Minutes;
  readonly setUp: { readonly what: string; readonly minutes: Minutes; readonly standing: boolean } | null;
  readonly because:
    | Hold
    | {
        /** `hands full`: a coat is in hand; `shut for good`: only a mend helps. */
        readonly code: "no bench hours" | "does not fit" | "hands full" | "shut for good";
        readonly because: string;
        readonly remedy: string | null;
      };
  /** What holds it besides, and ends sooner. */
  readonly also?: readonly Hold[];
  /** What its late window asks for first, and is held: the scuff. */
  readonly preparation?: Preparation;
  readonly until: Instant | null;
}

export interface PreparedRow {
  readonly station: string;
  readonly setUp: string;
  readonly state: "getting ready" | "ready" | "kept too long" | "all served";
  readonly ready: Instant;
  /** Null: until another load. */
  readonly until: Instant | null;
  /** `until` of a cup is predicted for the air it stands in, where its file says so many minutes. */
  readonly keptByFile?: Minutes;
  readonly putAwayMinutes: Minutes;
}

export interface BenchNow {
  /** The bench session running now; null: shut. */
  readonly closes: Instant | null;
  readonly minutesLeft: Minutes;
  /** Next opening after now (after this bench session); null: none within the horizon. */
  readonly opensNext: Instant | null;
  /** Minutes of putting away still to come before the bench shuts. */
  readonly putAway: Minutes;
  /** Hours have never been said: ASSUMED_HOURS are used. */
  readonly assumedHours: boolean;
}

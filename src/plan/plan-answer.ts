import type { Tag } from "../journal/event.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import type { WhatIf } from "./ahead/what-if.ts";

/** The coming days as a timetable to follow, and when each piece is finished. Facts; words/ makes the sentences. */
export interface PlanAnswer {
  readonly at: Instant;
  /** How many days are shown, today with them. */
  readonly days: number;
  /** Bench hours have never been said: assumed ones are used. */
  readonly assumedHours: boolean;
  readonly quality: PlanQuality;
  /** Bench sessions of the days shown, in order; also those with nothing to do. */
  readonly sessions: readonly PlannedSession[];
  /** Every piece that is tagged, by tag, then those added and those the aim asks for that are begun in these days. */
  readonly pieces: readonly PieceForecast[];
  /** What a what-if changes; null: none was asked. */
  readonly changes: PlanChanges | null;
  readonly whatIf: WhatIf | null;
}

/** How far the plan can be from the best one, and whether it holds. */
export interface PlanQuality {
  /** `dispatch`: what was searched for broke a rule, so the plan made by a simple rule stands. */
  readonly basis: "plan" | "dispatch";
  /** No plan costs less. */
  readonly proven: boolean;
  /** It costs at most this many per cent more than the best plan, rounded up; null: nothing close is known. */
  readonly gapPercent: number | null;
  /** Rules that even the plan shown breaks, in the checker's words; empty: none. */
  readonly broken: readonly string[];
}

/** One bench session with its work in order. */
export interface PlannedSession {
  readonly opens: Instant;
  readonly closes: Instant;
  /** No bench hours: what is in hand goes on all the same. */
  readonly outsideHours: boolean;
  readonly rows: readonly PlannedRow[];
  /** What must be put away, and by when: as the bench shuts, or before work that must keep apart from it. */
  readonly putAway: readonly PutAway[];
  /** Bench time left over. */
  readonly free: Minutes;
}

export interface PutAway {
  readonly station: string;
  readonly what: string;
  readonly minutes: Minutes;
  readonly by: Instant;
}

/** A piece as a timetable names it. */
export interface PlannedPiece {
  /** Null: not tagged yet. */
  readonly tag: Tag | null;
  /** Counts those not tagged yet, from 1; null: tagged. */
  readonly nth: number | null;
  readonly name: string;
  readonly process: string;
}

/** Pieces worked one after the other at one station in the same set-up, coat or colour: one row to follow. */
export interface PlannedRow {
  /** In the order they are worked. */
  readonly pieces: readonly PlannedPiece[];
  readonly step: string;
  /** `mend`: a coat whose last window was missed is levelled and laid again; `again`: done over upon it. */
  readonly part: "step" | "preparation" | "mend" | "again";
  /** What the preparation is called, `scuff`; null: none. */
  readonly preparation: string | null;
  readonly colour: string | null;
  readonly coat: string | null;
  readonly station: string;
  /** Minutes 0: it stands already. Null: none is needed. */
  readonly setUp: { readonly what: string; readonly minutes: Minutes } | null;
  /** The hands are needed from here on, for the set-up first. */
  readonly from: Instant;
  readonly until: Instant;
  /** Left for another bench session it misses a window, or begun in this one after `by`; null: none will have shut. */
  readonly shuts: { readonly by: Instant | null } | null;
  /** Hands-on without the set-up. */
  readonly minutes: Minutes;
  /** Minutes of the whole, where this is only a part of it; null: it is the whole. */
  readonly ofMinutes: Minutes | null;
  /** Short checks, in minutes after each coat was laid. */
  readonly looks: readonly Minutes[];
  /** What its step wants to be measured and was not yet, or came out too high. */
  readonly measures: readonly string[];
  /** Names of the cautions it comes with. */
  readonly cautions: readonly string[];
  /** It is in hand already. */
  readonly inHand: boolean;
  /** Pieces of it that are to be tagged as it begins. */
  readonly tagsNew: boolean;
  /** Pieces that are finished with it. */
  readonly finishes: readonly PlannedPiece[];
}

/** When a piece will be finished, and if that is late, why. */
export interface PieceForecast {
  readonly piece: PlannedPiece;
  /** End of the last hands-on; null: not within the days looked at. */
  readonly lastHandsOn: Instant | null;
  /** When its last coat is dry-through; null: not known, or no coat. */
  readonly dryThrough: Instant | null;
  /** The end of the day it was promised for; null: it was not. */
  readonly due: Instant | null;
  readonly late: Late | null;
  /** Why it found no time; null: it did. */
  readonly noTime: NoTime | null;
}

/** By how much a piece is late (null: nobody knows) and what stands in its way. */
interface Late {
  readonly minutes: Minutes | null;
  readonly why: LateWhy;
}

export type LateWhy =
  | { readonly because: "date passed" }
  /** Alone, with the bench always open, it takes until then: its own work and waits. */
  | { readonly because: "waits"; readonly soonest: Instant | null }
  /** Alone it takes until then in these bench hours. */
  | { readonly because: "hours"; readonly soonest: Instant | null }
  /** Alone, in these bench hours, it would be on time but for nights and days too cold or damp for its coats. */
  | { readonly because: "air"; readonly soonest: Instant | null }
  | { readonly because: "hook"; readonly place: string }
  /** Without any one of these it would be on time; empty: several others come first. */
  | { readonly because: "hands"; readonly others: readonly PlannedPiece[] };

export type NoTime =
  | { readonly because: "measure first"; readonly step: string; readonly what: readonly string[] }
  | { readonly because: "touch first"; readonly step: string }
  /** The air is expected to be unfit for its coat in all bench hours looked at. */
  | { readonly because: "air"; readonly step: string; readonly coat: string | null }
  | {
      readonly because: "too long";
      readonly step: string;
      /** With its set-up and putting that away. */
      readonly minutes: Minutes;
      /** Longest bench session of the days looked at. */
      readonly longest: Minutes;
    }
  | { readonly because: "beyond"; readonly days: number };

/** What a what-if changes against the plan without it. */
export interface PlanChanges {
  /** Tagged pieces that finish at another time; null: not within the days looked at. */
  readonly finishes: readonly {
    readonly piece: PlannedPiece;
    readonly without: Instant | null;
    readonly with: Instant | null;
  }[];
  readonly newlyLate: readonly PlannedPiece[];
  readonly nowOnTime: readonly PlannedPiece[];
  /** Minutes of preparation and mending, more (or fewer, negative). */
  readonly amends: Minutes;
}

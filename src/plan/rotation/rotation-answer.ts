import type { Minutes } from "../../time/instant.ts";
import type { TooLong } from "../ahead/no-time.ts";
import type { Hold } from "../plan-shop.ts";
import type { BenchRound } from "./bench-round.ts";

/** So many pieces finished every so many days. */
export interface Pace {
  readonly pieces: number;
  readonly days: number;
}

/** What a search is at: a pace, or the same pace with one thing otherwise. */
export type Looking = { readonly at: "pace" | "change"; readonly pace: Pace };

/** Who minds a search. */
export interface Minder {
  /** Looked at between the nodes of a search; true: go on with what there is. */
  readonly isOver: () => boolean;
  /** Told now and then what is looked at. */
  readonly onLook?: (looking: Looking) => void;
}

/** What keeping a process in rotation takes and gives. */
export interface RotationAnswer {
  readonly process: string;
  readonly round: BenchRound;
  readonly hands: number;
  /** Of one piece: hands-on, looks at coats, and setting up when all of it is made for this piece alone. */
  readonly work: { readonly handsOn: Minutes; readonly looks: Minutes; readonly setUp: Minutes };
  /** What was asked for. */
  readonly pace: Pace;
  /** By rising number out, the quickest pace found with no more out. */
  readonly table: readonly PaceRow[];
  /** The table stops where nothing quicker was found, or looked for; that proves nothing. */
  readonly tableCut: boolean;
  readonly timetable: Timetable | Impossible;
  /** What limits it, and what one change would give; the greatest first. */
  readonly changes: readonly Change[];
  /** When coats are not laid, for the air is unfit for them then: bench hours of any day, in minutes after midnight. */
  readonly unfitAir: readonly UnfitHours[];
  /** Windows that are used only where no preparation is asked; these steps would have later ones. */
  readonly withoutPreparation: readonly string[];
}

export interface PaceRow {
  readonly out: number;
  readonly pace: Pace;
  /** No quicker pace of those in the table has as few out. */
  readonly proven: boolean;
}

export interface UnfitHours {
  readonly step: string;
  readonly from: Minutes;
  readonly until: Minutes;
}

/** No rotation, with why. */
export interface Impossible {
  readonly is: "impossible" | "not found";
  readonly why:
    | { readonly because: "hands"; readonly needed: Minutes; readonly open: Minutes }
    | { readonly because: "hooks"; readonly place: string; readonly hooks: number }
    /** Together the waits, windows, hours and keep-aparts leave none. */
    | { readonly because: "together" }
    | { readonly because: "time was over" };
}

export interface Timetable {
  readonly is: "timetable";
  readonly pace: Pace;
  readonly period: Minutes;
  /** Nothing has less: proven. Else `leastSpan` tells the gap. */
  readonly proven: boolean;
  /** From the first hands-on to the last, of all pieces of a period together. */
  readonly span: Minutes;
  readonly leastSpan: Minutes;
  /** The same to dry-through; null: no sheet says. */
  readonly dryThrough: Minutes | null;
  /** Pieces out at the most, counted to the last hands-on, and to dry-through. */
  readonly out: number;
  readonly leastOut: number;
  readonly outToDryThrough: number | null;
  readonly days: readonly RotationDay[];
}

/** The work of one bench session of the round. */
export interface RotationDay {
  /** Which day of the period it opens on, from 0. */
  readonly day: number;
  /** Minutes after midnight of that day. */
  readonly opens: Minutes;
  readonly closes: Minutes;
  readonly rows: readonly RotationRow[];
  /** Set-ups to put away before the bench shuts. */
  readonly putAway: readonly { readonly setUp: string; readonly minutes: Minutes }[];
}

export interface RotationRow {
  /** Minutes after midnight of the session's day; with the set-up before. */
  readonly from: Minutes;
  readonly minutes: Minutes;
  readonly step: string;
  readonly station: string;
  readonly colour: string | null;
  readonly part: "step" | "look" | "preparation";
  /** Which of several parts it is split into; null: whole. */
  readonly split: number | null;
  /** Made directly before, in these minutes; minutes 0: it stands. Null: none is needed. */
  readonly setUp: { readonly what: string; readonly minutes: Minutes } | null;
  /** Which piece of the period, from 0, and how many periods ago it was begun. */
  readonly piece: number;
  readonly ago: number;
}

/** One thing otherwise, and what the same pace would then take. */
export interface Change {
  readonly what:
    | { readonly kind: "hours"; readonly minutes: Minutes }
    | { readonly kind: "hook"; readonly place: string }
    | { readonly kind: "cure"; readonly step: string; readonly minutes: Minutes }
    | { readonly kind: "hands" }
    | { readonly kind: "windows" }
    | { readonly kind: "keep apart" }
    /** The air fit for every coat at any hour. */
    | { readonly kind: "air" }
    /** One for each of the set-ups that take turns there. */
    | { readonly kind: "station"; readonly station: string };
  readonly span: Minutes;
  readonly out: number;
  /** Nothing has less; else it is what a short search found. */
  readonly proven: boolean;
}

/** A coat that may not be laid in the air of any bench session, or never dries in it. */
export type InThisAir =
  | {
      readonly because: "air";
      readonly step: string;
      readonly coat: string;
      /** As the bench opens; null: it is fit then, and not for long enough. */
      readonly air: NonNullable<Hold["air"]> | null;
      readonly remedy: string | null;
    }
  | { readonly because: "never dries"; readonly step: string; readonly coat: string };

/** No rotation can be looked for at all. */
export type NoRotation = { readonly because: "never open" } | TooLong | InThisAir;

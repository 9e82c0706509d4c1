import type { Minutes } from "../time/instant.ts";
import type { Mix } from "./quantity-form.ts";

/**
 * How far a coat has dried, least first. Words of ASTM D1640/D5895 and ISO 9117; `wet` is the moment
 * it is laid and has no time of its own.
 */
export const STAGES = ["wet", "set-to-touch", "dust-free", "tack-free", "dry-hard", "dry-through"] as const;
/** The stages a sheet gives a time for. */
export const [, ...TIMED_STAGES] = STAGES;
export type Stage = (typeof STAGES)[number];

/** What drives the cure, and so which air matters. */
export const CURES_BY = ["resin", "water", "solvent", "moisture", "light", "clock"] as const;
type CuresBy = (typeof CURES_BY)[number];

/** What work can put into the room, in the words of process files. `wet coat` is not among them: coats give it off by themselves. */
export const EMISSIONS = ["dust", "solvent vapour", "heat", "lead fume", "isocyanate", "mist"] as const;

/** The longest wait, stage or window a file may name, a year: more is a slip of the key. */
export const LONGEST_WAIT: Minutes = 366 * 1_440;

/** Work a late window asks for before the next coat: `{ do: scuff, hands_on: 4..6 min, gives_off: [dust] }`. */
export interface Preparation {
  readonly do: string;
  readonly handsOn: HandsOn;
  readonly givesOff: readonly Emission[];
  readonly cautions: readonly string[];
}

/** Hands-on minutes: `low <= likely <= high`. One figure gives all three; `low..high` has its middle as likely, rounded up. */
export interface HandsOn {
  readonly low: Minutes;
  readonly likely: Minutes;
  readonly high: Minutes;
}

/**
 * Something work puts into the room. `lasts`: minutes after the work's end (0: only while working), or
 * as long as the set-up stands (a hot pot). A coat also gives off `wet coat` by itself, until it is dust-free.
 */
export interface Emission {
  readonly what: string;
  readonly lasts: Minutes | "while set up";
}

/**
 * A span, counted from the hands-on end of the coat, in which the next coat may be begun.
 * `opens: "flash-off"` means the flash-off of the pass as sprayed. `shuts: null` never shuts.
 * `first` is the work asked for before coating in this window.
 */
export interface Window {
  readonly opens: Minutes | "flash-off";
  readonly shuts: Minutes | null;
  readonly first: Preparation | null;
}

/** A paint, sealer or resin, described once and used by many steps. Times are its sheet's, at its sheet's air. */
export interface Coat {
  readonly name: string;
  readonly curesBy: CuresBy;
  readonly sheetAir: { readonly celsius: number; readonly humidityPercent: number };
  /** Below this it does not count as curing; null: the sheet names none. */
  readonly lowestCelsius: number | null;
  /** Not to be laid in warmer air, nor in damper; missing: the sheet says nothing of it. */
  readonly highestCelsius?: number | undefined;
  readonly dampestPercent?: number | undefined;
  /** How strongly warmth speeds it, in kJ/mol, of a resin or solvent whose sheet says so; null or missing: that of its kind. */
  readonly activationEnergy?: number | null | undefined;
  /** Never opens by the clock alone: a touch must say so. */
  readonly feelFirst: boolean;
  /** Minutes from hands-on end to each stage the sheet names; rising in the order of STAGES. */
  readonly stages: Readonly<Partial<Record<Stage, Minutes>>>;
  /** Sorted by opening and not overlapping. Empty: the next coat waits for dry-hard. */
  readonly windows: readonly Window[];
  /** Default flash-off between passes of the same step, where the scheme names none. */
  readonly flashOff: Minutes;
  readonly givesOff: readonly Emission[];
  readonly cautions: readonly string[];
  /** What a cup of it is mixed of; null or missing: it comes ready, or its file does not say. */
  readonly mix?: Mix | null | undefined;
  /** Lines for the set-up sheet, as written: `{ thinner: "10 %", mix: "2 : 1 by volume" }`. */
  readonly sheet: Readonly<Record<string, string>>;
  readonly source: string | null;
}

import type { Minutes } from "../time/instant.ts";
import type { Emission, HandsOn, Stage } from "./coat.ts";

/**
 * Preparation that several tasks share while it keeps. `do` may hold `{colour}`, filled from the pass
 * (two pieces share a load only when the filled words are equal).
 */
export interface SetUp {
  readonly do: string;
  readonly takes: Minutes;
  readonly keeps: /** A hot pot: good until `minutes` after it was last used (or made ready). */
    | { readonly way: "heat"; readonly minutes: Minutes }
    /** A mixed cup: good until `minutes` after mixing ended, for at most `serves` pieces. */
    | { readonly way: "mix"; readonly minutes: Minutes; readonly serves: number }
    /** A loaded airbrush: good until another load at the same station, or put away. */
    | { readonly way: "load" };
  /** Minutes to put it away before the bench shuts. */
  readonly putAway: Minutes;
  readonly cautions: readonly string[];
}

/** Where a hung piece keeps its hook: until a stage of the coat, or for a time, or as long as the step's wait. */
export type HangsUntil = { readonly stage: Stage } | { readonly minutes: Minutes };

/** Hands-on work at a station, then (often) a wait. */
export interface Step {
  /** Unique in its process; what the maker calls it. */
  readonly name: string;
  readonly station: string;
  readonly handsOn: HandsOn;
  /** May be left half-done and gone on with another session; never a coat. */
  readonly mayStop: boolean;
  readonly setUp: SetUp | null;
  /** `scheme`: one pass for each colour of the piece's scheme. */
  readonly passes: "one" | "scheme";
  /** Name of the coat it lays, found in the definition's `coats`. */
  readonly coat: string | null;
  /** Which stage of the coat before it waits for; null: a coat waits for its window, other work for dry-hard. */
  readonly waitsFor: Stage | null;
  /** A plain wait after its hands-on end before any step after it may begin. */
  readonly wait: Minutes;
  readonly place: string | null;
  readonly until: HangsUntil | null;
  /** Names of the steps that must be done first. The file's default is the step above it. */
  readonly after: readonly string[];
  /** Short attended checks, in minutes after the hands-on end. */
  readonly look: readonly Minutes[];
  readonly givesOff: readonly Emission[];
  /** What must be measured on the piece before it: `{ wood moisture: at most 10 % }`. */
  readonly needs: readonly { readonly what: string; readonly atMost: number; readonly unit: string }[];
  readonly ballast: Ballast | null;
  readonly cautions: readonly string[];
  /** A step with answers: each answer goes on, or back to the named step. */
  readonly result: Readonly<Record<string, { readonly goes: "on" } | { readonly backTo: string }>> | null;
  /** Lines for the set-up sheet, as written: `{ nozzle: "0.3 mm", pressure: "1.5 bar" }`. */
  readonly sheet: Readonly<Record<string, string>>;
}

/** Metals that ballast is made of. */
export const BALLAST_METALS = ["lead", "tin", "tungsten", "steel"] as const;

/** Holes for ballast, all alike: their depth or the weight they are to take together, whichever the file says. */
export interface Ballast {
  readonly holes: number;
  readonly acrossMillimetres: number;
  readonly deepMillimetres: number | null;
  /** Missing where a process was kept before weights were told. */
  readonly grams?: number | null | undefined;
  /** Lead where a process kept before metals were told names none. */
  readonly metal?: (typeof BALLAST_METALS)[number];
}

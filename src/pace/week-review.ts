import type { Override, Tag } from "../journal/event.ts";
import type { CivilDate, Instant, Minutes } from "../time/instant.ts";

/** How many, and which pieces stand behind it: a piece may count more than once, its tag stands there once. */
export interface Figure {
  readonly count: number;
  /** Rising. */
  readonly tags: readonly Tag[];
}

/**
 * What a week gave, plain and ready for JSON, named as on the screen. Moments are instants, lengths minutes, days are
 * of 24 hours. In a week still running every figure is that of the week so far.
 */
export interface WeekReview {
  /** `2026-W13` */
  readonly week: string;
  readonly start: CivilDate;
  /** Its last day. */
  readonly end: CivilDate;
  /** The week is not over. */
  readonly running: boolean;
  /** Pieces whose last step was hung in the week, those scrapped later too: past weeks stay as they were. */
  readonly finished: Figure;
  readonly tagged: Figure;
  readonly scrapped: Figure & { readonly pieces: readonly { tag: Tag; at: Instant; why: string }[] };
  /** Mends the maker made; what a result sent back is counted apart. */
  readonly mended: Figure & {
    readonly minutes: Minutes;
    readonly mends: readonly { tag: Tag; at: Instant; what: string; minutes: Minutes }[];
  };
  readonly sentBack: Figure & {
    readonly results: readonly { tag: Tag; at: Instant; step: string; answer: string; to: string }[];
  };
  readonly handsOn: HandsOnUsed;
  readonly daysOut: DaysOut;
  readonly steps: readonly StepAgainstEstimate[];
  readonly windows: {
    readonly kept: Figure & { readonly windows: readonly WindowRecord[] };
    readonly missed: Figure & { readonly minutes: Minutes; readonly windows: readonly WindowRecord[] };
  };
  /** Acts of the week in which the maker went on although advised to wait; tags: the pieces in it, `station` a set-up's. */
  readonly overrides: readonly OverrideRecord[];
  /** What the maker noted, of pieces or of the whole shop. */
  readonly notes: readonly NoteRecord[];
  readonly aim: AgainstAim;
  /** Finished in each of eight weeks, oldest first; the last is this one. */
  readonly lastWeeks: readonly (Figure & { readonly week: string; readonly start: CivilDate })[];
}

/**
 * Hands-on minutes, preparations and mends with them, against the hours the bench was open. Work counts in the week it
 * was hung; set-ups are not in it: a pot melts by itself.
 */
export interface HandsOnUsed {
  readonly minutes: Minutes;
  readonly tags: readonly Tag[];
  /** Minutes the bench was open (for two pairs of hands twice as many), up to now. */
  readonly open: Minutes;
  /** Minutes it will still be open this week. */
  readonly left: Minutes;
  /** Hung without ever being taken: their minutes are known to nobody and not in the sum. */
  readonly unknown: Figure;
  /** Hung "as usual": their minutes are a guess and in the sum. */
  readonly guessed: Figure;
  /** Put down half-done this week and still lying so: their minutes count in the week in which the work ends. */
  readonly halfDone: Figure & { readonly minutes: Minutes };
}

/** Of the pieces finished in the week. */
export interface DaysOut {
  /**
   * Median of their days from first hands-on to last hang: the middle one, of an even number the mean of the middle
   * two (Hyndman and Fan 1996, their types 2 and 5 to 9). Null: none was finished.
   */
  readonly median: number | null;
  /** Share of all their time out in which they were not in hand, 0 to 1; null: none was finished. */
  readonly hanging: number | null;
  readonly tags: readonly Tag[];
  readonly pieces: readonly { tag: Tag; days: number; hanging: number }[];
}

/** Hands-on minutes of one step as worked in the week; guesses are left out. */
export interface StepAgainstEstimate {
  readonly process: string;
  readonly step: string;
  readonly times: number;
  /** Median of them, to the whole minute. */
  readonly minutes: Minutes;
  /** The process file's likely minutes. */
  readonly estimate: Minutes;
  /** All of them together, and all their estimates. */
  readonly total: Minutes;
  readonly estimated: Minutes;
  readonly tags: readonly Tag[];
}

/** One coat that a next coat was due upon, and what became of its window. */
export interface WindowRecord {
  readonly tag: Tag;
  readonly coat: string;
  /** The step that laid it, and the one that was due. */
  readonly laid: string;
  readonly next: string;
  readonly shut: Instant;
  /** When the next coat was taken (hung, where it was never taken); null: not yet. */
  readonly taken: Instant | null;
  /** Of a missed one: minutes of preparation done for it, else those now asked for; of a kept one 0. */
  readonly minutes: Minutes;
}

export interface OverrideRecord extends Override {
  readonly at: Instant;
  readonly tags: readonly Tag[];
  /** The step, or the set-up. */
  readonly what: string;
}

export interface NoteRecord {
  readonly at: Instant;
  /** Rising; none: of the whole shop. */
  readonly tags: readonly Tag[];
  readonly text: string;
}

export interface AgainstAim {
  /** Null: no aim was set. */
  readonly finishedPerWeek: number | null;
  /** Finished less the aim; null: no aim. */
  readonly difference: number | null;
  readonly out: number | null;
  /** Pieces out at the week's end, or now. */
  readonly outNow: Figure;
}

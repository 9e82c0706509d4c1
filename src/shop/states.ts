import type { Preparation, Stage } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";

/**
 * What may happen with one step of one piece at a moment (DESIGN, "What may happen when"). Derived from
 * facts and the clock, never stored. `held` lies over open and shut and is safety's to say.
 */
export type StepState =
  /** Steps before it are not done. */
  | { readonly is: "blocked"; readonly by: readonly string[] }
  /** The coat before (or a plain wait) is not fit yet. `opens` null: not by the clock, a touch must say so, or the air never lets it. */
  | {
      readonly is: "drying";
      readonly opens: Instant | null;
      /** Shut of the window that opens next; null: never. */
      readonly shuts: Instant | null;
      readonly because: "window" | "stage" | "tacky" | "feel first" | "air" | "wait" | "between windows";
      /** The coat it waits on, if any, and the step that laid it. */
      readonly coat: string | null;
      readonly step: string | null;
      readonly stage: Stage | null;
      /** The work that the next window will ask for first. */
      readonly preparation: Preparation | null;
    }
  | {
      readonly is: "open";
      readonly since: Instant;
      /** Null: never shuts. */
      readonly shuts: Instant | null;
      /** What the window after this one asks for; null: nothing, or no window after it. */
      readonly preparationAfter: Preparation | null;
      /** There is a window after this one. False and shuts set: after the shut only a mend helps. */
      readonly opensAgain: boolean;
      /** Opening of the window after this one; null: none. */
      readonly nextOpens: Instant | null;
    }
  /** The window shut. `preparation` must be done first; null: no later window, only a mend from the coat. */
  | {
      readonly is: "shut";
      readonly since: Instant;
      readonly preparation: Preparation | null;
      readonly shuts: Instant | null;
      readonly coat: string;
      readonly step: string;
    }
  | {
      readonly is: "in hand";
      readonly since: Instant;
      readonly part: "step" | "preparation";
      readonly forgotten: boolean;
    }
  /** Half-done since it was put down last. */
  | { readonly is: "left"; readonly since: Instant; readonly part: "step" | "preparation" }
  | { readonly is: "done"; readonly at: Instant }
  | { readonly is: "ended"; readonly how: "finished" | "scrapped" | "sold" | "given" | "kept" };

/** A newest coat as it hangs: how far, and when it will be further. Moments by the sheet until the air is known. */
export interface CoatState {
  readonly coat: string;
  readonly step: string;
  readonly pass: number;
  readonly laidAt: Instant;
  readonly stage: Stage;
  /** Moments each stage is reached, those the sheet names. */
  readonly reaches: Readonly<Partial<Record<Stage, Instant>>>;
  /** 0 to 1, of the way to dry-hard (to the last named stage where it names no dry-hard). */
  readonly progress: number;
  readonly hard: Instant | null;
}

/** Two things that must not be in one room at once: while one lasts, nothing that gives off the other may start. */
export interface KeepApart {
  readonly these: readonly [string, string];
  /** Why, in one sentence, shown with the hold. */
  readonly because: string;
  readonly source: string;
}

/** A hazard, told whole once per bench session (once per melt where `perMelt`), then in one line. */
export interface Caution {
  /** What process files and ticks call it, `molten lead`. */
  readonly name: string;
  /** The one line shown after it was read. */
  readonly line: string;
  readonly whatItIs: string;
  readonly do: readonly string[];
  readonly never: readonly string[];
  /** Published sources, each with title and publisher. */
  readonly sources: readonly string[];
  readonly perMelt: boolean;
  /** Ends every caution told whole: local code, the product's data sheet and a licensed professional come first. */
  readonly closing: string;
}

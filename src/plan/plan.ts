import type { Minutes } from "../time/instant.ts";

/** When everything is worked, and what found no time. */
export interface Plan {
  /** In order of start. */
  readonly visits: readonly Visit[];
  /** Tasks that could not be placed before the horizon (with all that follow them), by number. */
  readonly unplaced: readonly number[];
  /** When each piece is finished, its last cure included; null: not within the horizon. */
  readonly finish: readonly (Minutes | null)[];
}

/** One stretch of hands-on work on a task: the hands are taken from `start - setUp` to `end`. */
export interface Visit {
  readonly task: number;
  /**
   * A split task has several visits as `step`. `mend` levels a coat whose last window was missed and lays it again;
   * `again` does over what had been done upon it.
   */
  readonly part: "step" | "preparation" | "mend" | "again";
  /** Minutes of setting up directly before. */
  readonly setUp: Minutes;
  readonly start: Minutes;
  readonly end: Minutes;
}

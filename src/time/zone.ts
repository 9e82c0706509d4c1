import type { CivilDate, Instant } from "./instant.ts";

/**
 * A time zone as a small table of its changes, so that the everyday path never starts Intl
 * (10 to 24 ms). `changes` are sorted by `at`; before the first one `offsetMinutes` holds.
 */
export interface Zone {
  /** IANA name, `Europe/Dublin`. */
  readonly name: string;
  /** Minutes east of UTC before the first change. */
  readonly offsetMinutes: number;
  readonly changes: readonly { readonly at: Instant; readonly offsetMinutes: number }[];
}

/** A moment as the wall clock of a zone shows it. */
export interface LocalTime {
  readonly date: CivilDate;
  readonly hour: number;
  readonly minute: number;
  /** ISO 8601: 1 is Monday, 7 Sunday. */
  readonly weekday: number;
}

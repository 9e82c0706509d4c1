import type { CivilDate, Instant } from "./instant.ts";

/** Minutes since local midnight, from opening to closing; a bench may run past midnight (closes > 1440). */
export interface DayHours {
  readonly opens: number;
  readonly closes: number;
}

/** The sessions of each weekday, `[0]` is Monday. An empty list: closed that day. */
export type WeeklyHours = readonly (readonly DayHours[])[];

/**
 * When the maker works. A weekly pattern holds from its date on until a later one; a single day may
 * differ; days away (both ends included) are closed whatever else is said.
 */
export interface BenchHours {
  readonly weekly: readonly { readonly from: CivilDate; readonly hours: WeeklyHours }[];
  readonly days: Readonly<Record<CivilDate, readonly DayHours[]>>;
  readonly away: readonly { readonly from: CivilDate; readonly to: CivilDate }[];
}

/** One stretch of bench time, in absolute moments: clock changes have vanished. */
export interface Session {
  readonly opens: Instant;
  readonly closes: Instant;
}

import { addDays, daysBetween, instantOf, weekdayOf } from "./civil.ts";
import type { CivilDate, Instant } from "./instant.ts";
import type { Zone } from "./zone.ts";

export interface Week {
  /** Its first day. */
  readonly start: CivilDate;
  /** `2026-W13` */
  readonly name: string;
}

/**
 * The week a date lies in. ISO 8601 by default: weeks begin on Monday and belong to the year of their
 * Thursday. With another first weekday (1 Monday to 7 Sunday) a week belongs to the year of its fourth day.
 * `weekOf("2026-03-29").name === "2026-W13"`
 */
export function weekOf(date: CivilDate, firstWeekday = 1): Week {
  const start = addDays(date, -((weekdayOf(date) - firstWeekday + 7) % 7));
  const middle = addDays(start, 3);
  const year = middle.slice(0, 4);
  const number = Math.floor(daysBetween(`${year}-01-01`, middle) / 7) + 1;
  return { start, name: `${year}-W${String(number).padStart(2, "0")}` };
}

/** From the first moment of a week's first day to the first moment after its seventh; a clock change makes it longer or shorter. */
export function weekSpan(start: CivilDate, zone: Zone): { from: Instant; to: Instant } {
  return { from: instantOf(zone, start, 0), to: instantOf(zone, addDays(start, 7), 0) };
}

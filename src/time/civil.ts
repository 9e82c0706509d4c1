import { type CivilDate, type Instant, MINUTE, type Minutes } from "./instant.ts";
import type { LocalTime, Zone } from "./zone.ts";

/** Milliseconds of a civil day, which the clocks may make longer or shorter. */
const DAY = 1_440 * MINUTE;

/** Minutes east of UTC in force at a moment. A change holds from its own moment on. */
export function offsetAt(zone: Zone, instant: Instant): Minutes {
  const { changes } = zone;
  let low = 0;
  let high = changes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const change = changes[middle];
    if (change !== undefined && change.at <= instant) low = middle + 1;
    else high = middle;
  }
  return changes[low - 1]?.offsetMinutes ?? zone.offsetMinutes;
}

/** What the wall clock of the zone shows at a moment; seconds are dropped. */
export function localTime(zone: Zone, instant: Instant): LocalTime {
  const shown = new Date(instant + offsetAt(zone, instant) * MINUTE);
  return {
    date: dateOfDay(Math.floor(shown.getTime() / DAY)),
    hour: shown.getUTCHours(),
    minute: shown.getUTCMinutes(),
    weekday: shown.getUTCDay() === 0 ? 7 : shown.getUTCDay(),
  };
}

/** Minutes since midnight on the wall clock. */
export function minuteOfDay(local: LocalTime): number {
  return local.hour * 60 + local.minute;
}

/**
 * The moment when the wall clock of the zone shows `minute` minutes after midnight of `date`; 1440 and more
 * run on into the next day's clock. Where clocks go forward, a reading that never is moves forward by the
 * gap; where they go back, a reading shown twice is the first. (RFC 5545, 3.3.5, rules the same.)
 * `instantOf(dublin, "2026-03-30", 18 * 60)` is 17:00 UTC.
 */
export function instantOf(zone: Zone, date: CivilDate, minute: number): Instant {
  const reading = dayOfDate(date) * DAY + minute * MINUTE;
  // No zone is a day from UTC, and none changes twice in two days: these two are all that can hold.
  const before = offsetAt(zone, reading - DAY);
  const later = offsetAt(zone, reading + DAY);
  const first = reading - before * MINUTE;
  if (before === later || offsetAt(zone, first) === before) return first;
  const second = reading - later * MINUTE;
  return offsetAt(zone, second) === later ? second : first;
}

/** The date `count` days later. `addDays("2026-02-28", 1) === "2026-03-01"` */
export function addDays(date: CivilDate, count: number): CivilDate {
  return dateOfDay(dayOfDate(date) + count);
}

/** ISO 8601: 1 is Monday, 7 Sunday. `weekdayOf("2026-03-29") === 7` */
export function weekdayOf(date: CivilDate): number {
  // 1970-01-01, day 0, was a Thursday.
  return ((((dayOfDate(date) + 3) % 7) + 7) % 7) + 1;
}

/** Days from `a` to `b`; negative if `b` is earlier. */
export function daysBetween(a: CivilDate, b: CivilDate): number {
  return dayOfDate(b) - dayOfDate(a);
}

/** Whether the text is a date that is: `2026-02-29` is not one. */
export function isCivilDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const moment = Date.parse(`${text}T00:00Z`);
  return !Number.isNaN(moment) && dateOfDay(moment / DAY) === text;
}

function dayOfDate(date: CivilDate): number {
  const [year, month, day] = [Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8))];
  const days = Date.UTC(year, month - 1, day) / DAY;
  if (Number.isNaN(days)) throw new RangeError(`"${date}" is not a date`);
  return days;
}

function dateOfDay(day: number): CivilDate {
  return new Date(day * DAY).toISOString().slice(0, 10);
}

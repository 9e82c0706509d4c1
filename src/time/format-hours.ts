import type { DayHours, WeeklyHours } from "./bench-hours.ts";
import { clockReading } from "./clock-reading.ts";

const NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/** One day's hours: `18:00-21:00`, `9:00-12:00 13:00-16:00`, `closed`. A closing past midnight is the next day's clock. */
export function formatDayHours(hours: readonly DayHours[]): string {
  if (hours.length === 0) return "closed";
  return hours.map(({ opens, closes }) => `${clockReading(opens)}-${clockReading(closes)}`).join(" ");
}

/**
 * A weekly pattern in the words readWeeklyHours reads back: days alike are said together, closed ones left out.
 * `weekdays 18:00-21:00, Sat 9:00-16:00`
 */
export function formatWeeklyHours(weekly: WeeklyHours): string {
  const said = NAMES.map((_, index) => formatDayHours(weekly[index] ?? []));
  const parts = said.flatMap((hours, index) => {
    if (hours === "closed" || said.indexOf(hours) < index) return [];
    return [`${sayDays(NAMES.flatMap((_, day) => (said[day] === hours ? [day] : [])))} ${hours}`];
  });
  return parts.length === 0 ? "daily closed" : parts.join(", ");
}

/** Days (0 is Monday, rising) as few words: `daily`, `weekdays`, `Tue-Thu`, `Mon Wed`. */
function sayDays(days: readonly number[]): string {
  const names = days.map((day) => NAMES[day]);
  const [first = 0] = days;
  const last = days.at(-1) ?? first;
  if (days.length === 7) return "daily";
  if (days.length < 3 || last - first !== days.length - 1) return names.join(" ");
  return first === 0 && last === 4 ? "weekdays" : `${NAMES[first]}-${NAMES[last]}`;
}

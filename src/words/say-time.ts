import { addDays, daysBetween, localTime, weekdayOf } from "../time/civil.ts";
import { formatDuration } from "../time/duration.ts";
import type { CivilDate, Instant, Minutes } from "../time/instant.ts";
import type { Speech } from "./speech.ts";

const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/**
 * A moment by the shop's clock, with as much of its day as is needed: none today, the weekday within six days
 * either way, then the date, and the year when it is another.
 *
 * @example sayClock(at, speech) // "19:34", "Tue 19:34", "Tue 14 Apr 19:34", "14 Apr 2027 19:34"
 */
export function sayClock(at: Instant, speech: Speech): string {
  const { date, hour, minute } = localTime(speech.zone, at);
  const clock = sayClockOfDay(hour * 60 + minute, speech.clock24);
  const today = localTime(speech.zone, speech.now).date;
  return date === today ? clock : `${sayDay(date, today)} ${clock}`;
}

/** The same with the day always told, for the head of a screen. `Tue 14 Apr 18:42` */
export function sayDayAndClock(at: Instant, speech: Speech): string {
  const { date, hour, minute } = localTime(speech.zone, at);
  return `${sayFullDay(date)} ${sayClockOfDay(hour * 60 + minute, speech.clock24)}`;
}

/**
 * Minutes after midnight as a clock shows them; past midnight the clock begins again.
 *
 * @example sayClockOfDay(1174, true) // "19:34"
 * @example sayClockOfDay(1174, false) // "7:34 pm"
 */
export function sayClockOfDay(minuteOfDay: number, clock24: boolean): string {
  const hour = Math.floor(minuteOfDay / 60) % 24;
  const minutes = String(minuteOfDay % 60).padStart(2, "0");
  if (clock24) return `${String(hour).padStart(2, "0")}:${minutes}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${minutes} ${hour < 12 ? "am" : "pm"}`;
}

/** A date as seen from today: `today`, `tomorrow`, `Fri`, `Fri 3 Apr`, `3 Apr 2027`. */
export function sayDate(date: CivilDate, speech: Speech): string {
  const today = localTime(speech.zone, speech.now).date;
  if (date === today) return "today";
  return date === addDays(today, 1) ? "tomorrow" : sayDay(date, today);
}

/** A date with weekday, day and month, whatever today is. `Tue 14 Apr` */
export function sayFullDay(date: CivilDate): string {
  const [, month = 1, day = 1] = date.split("-").map(Number);
  return `${sayWeekday(weekdayOf(date))} ${day} ${MONTHS[month - 1]}`;
}

/** ISO 8601 weekday as a word. `sayWeekday(2) === "Tue"` */
export function sayWeekday(weekday: number): string {
  return WEEKDAYS[weekday - 1] ?? "";
}

/** How long, as people write it. `sayWait(90) === "1 h 30"` Less than nothing is said as nothing. */
export function sayWait(minutes: Minutes): string {
  return formatDuration(Math.max(0, Math.round(minutes)));
}

/**
 * Time at the bench, to the whole minute and never in days: 56 h open in a week are not "2 d 8 h".
 *
 * @example sayBenchTime(3345) // "55 h 45"
 */
export function sayBenchTime(minutes: number): string {
  const whole = Math.round(minutes);
  const rest = whole % 60;
  if (whole < 60) return sayWait(whole);
  return `${(whole - rest) / 60} h${rest === 0 ? "" : ` ${String(rest).padStart(2, "0")}`}`;
}

/** The shortest day that cannot be taken for another: a weekday within six days, else the date. */
function sayDay(date: CivilDate, today: CivilDate): string {
  if (Math.abs(daysBetween(today, date)) < 7) return sayWeekday(weekdayOf(date));
  if (date.slice(0, 4) === today.slice(0, 4)) return sayFullDay(date);
  const [year, month = 1, day] = date.split("-").map(Number);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

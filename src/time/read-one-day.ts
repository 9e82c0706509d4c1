import type { BenchHours, DayHours } from "./bench-hours.ts";
import { addDays, localTime, minuteOfDay } from "./civil.ts";
import { clockReading, readClock } from "./clock-reading.ts";
import type { CivilDate, Instant } from "./instant.ts";
import { dateFromDay, type WordsProblem } from "./read-date.ts";
import { readDayHours } from "./read-hours.ts";
import { hoursOn } from "./sessions.ts";
import type { Zone } from "./zone.ts";

/** Where words about hours are said: the moment, and the hours so far, which "till 22:15" and "not tonight" lean on. */
export interface HoursContext {
  readonly now: Instant;
  readonly zone: Zone;
  readonly hours: BenchHours;
}

/** One day's own hours, in the shape the journal keeps. `hours: null` is "as usual again". */
export interface DaySetting {
  readonly of: "day";
  readonly date: CivilDate;
  readonly hours: readonly DayHours[] | null;
}

export type DayReading = { readonly setting: DaySetting } | WordsProblem;

/** "till 1:00", said in the evening, may mean the night up to here. */
const NIGHT_ENDS = 6 * 60;
const SINGLE_DAY = /^(?:on|this|next|today|tonight|tomorrow|\d{4}-\d\d-\d\d)$/i;

/** `22:15 tonight`: the last session begun by then ends then, later ones fall out; with none to lengthen, the bench opens now. */
export function readTill(text: string, context: HoursContext): DayReading {
  const reading = readClock(withoutToday(text));
  if (reading === null) return { problem: `"${text}" is not a time of day; write it like till 22:15.` };
  const { date, minute } = benchDay(context);
  const closes = reading > minute ? reading : reading + 1_440;
  if (closes > 1_440 + NIGHT_ENDS) {
    const was = clockReading(reading);
    return { problem: `It is ${clockReading(minute)}, ${was} has been; say a later time, like till 22:15.` };
  }
  const day = hoursOn(context.hours, date);
  const begun = day.filter((stretch) => stretch.opens < closes);
  const last = begun.at(-1);
  const fromNow = { opens: minute, closes };
  if (last === undefined) return settle(date, [fromNow, ...day]);
  if (last.closes < minute) return settle(date, [...begun, fromNow]);
  return settle(date, [...begun.slice(0, -1), { ...last, closes }]);
}

/** `tonight`, `Friday`: closed that day; today only from now on, for what was open stays so. */
export function readNot(text: string, context: HoursContext): DayReading {
  const { date: today, minute } = benchDay(context);
  const read = readDay(text, today);
  if ("problem" in read) return read;
  if (read.date !== today) return settle(read.date, []);
  const before = hoursOn(context.hours, today).filter((stretch) => stretch.opens < minute);
  return settle(
    today,
    before.map((stretch) => ({ ...stretch, closes: Math.min(stretch.closes, minute) })),
  );
}

/** `tonight`, `Friday`: that day's own hours are forgotten. */
export function readUsual(text: string, context: HoursContext): DayReading {
  const read = readDay(text, benchDay(context).date);
  return "problem" in read ? read : settle(read.date, null);
}

/** `17 till 22`, today's. Null: the words begin with no time of day. */
export function readFromClock(text: string, context: HoursContext): DayReading | null {
  const [start = "", end = ""] = text.split(/ (?:till|until|to) /i);
  if (readClock(start) === null) return null;
  const read = readDayHours(`${start}-${withoutToday(end)}`);
  return "problem" in read ? read : settle(benchDay(context).date, read.hours);
}

/** `tonight 19-23`, `on Saturday 9-12`, `this Sat 9-12`, `3 May 9-12`. Null: the words speak of no single day. */
export function readOneDay(words: string, context: HoursContext): DayReading | null {
  const { date: today } = benchDay(context);
  const parts = words.split(" ");
  const single = SINGLE_DAY.test(parts[0] ?? "");
  // Without such a word a lone weekday speaks of every week, so only a day and month will do.
  const fewest = single ? 1 : 2;
  for (let count = Math.min(4, parts.length); count >= fewest; count--) {
    const day = dateFromDay(parts.slice(0, count).join(" "), today, "future");
    if ("problem" in day) continue;
    const said = parts.slice(count).join(" ");
    const read = readDayHours(said);
    return "problem" in read ? read : settle(day.date, read.hours);
  }
  if (!single) return null;
  return { problem: `"${words}" names no day first; write it like tomorrow 9-12 or on 3 May 9-12.` };
}

function settle(date: CivilDate, hours: readonly DayHours[] | null): DayReading {
  return { setting: { of: "day", date, hours } };
}

function readDay(text: string, today: CivilDate): { date: CivilDate } | WordsProblem {
  return dateFromDay(text === "" ? "today" : text, today, "future");
}

function withoutToday(text: string): string {
  return text.replace(/ ?\b(?:tonight|today)$/i, "");
}

/** The day the bench is in: after midnight still the day before, while its hours run on. */
function benchDay(context: HoursContext): { date: CivilDate; minute: number } {
  const local = localTime(context.zone, context.now);
  const minute = minuteOfDay(local);
  const before = addDays(local.date, -1);
  const runsOn = hoursOn(context.hours, before).some((stretch) => stretch.closes > 1_440 + minute);
  return runsOn ? { date: before, minute: minute + 1_440 } : { date: local.date, minute };
}

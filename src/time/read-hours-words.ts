import type { WeeklyHours } from "./bench-hours.ts";
import { addDays, localTime } from "./civil.ts";
import type { CivilDate } from "./instant.ts";
import { dateFromDay, type WordsProblem } from "./read-date.ts";
import { readWeeklyHours } from "./read-hours.ts";
import {
  type DaySetting,
  type HoursContext,
  readFromClock,
  readNot,
  readOneDay,
  readTill,
  readUsual,
} from "./read-one-day.ts";

/** What words about hours settle, in the shape the journal keeps. */
type HoursSetting =
  | { readonly of: "hours"; readonly from: CivilDate; readonly weekly: WeeklyHours }
  | DaySetting
  | { readonly of: "away"; readonly from: CivilDate; readonly to: CivilDate }
  | { readonly of: "back"; readonly from: CivilDate };

type HoursReading = { readonly setting: HoursSetting } | WordsProblem;

/** Between two dates; a hyphen inside an ISO date is none. */
const SPAN = / ?(?:\.\.+|[–—]|(?<!\d{4}|\d{4}-\d\d)-|\b(?:to|till|until)\b) ?/i;
const AWAY_EXAMPLE = "write it like away 3 May..17 May";
/** Longer ones are taken at their word only with the year. */
const LONGEST_AWAY_DAYS = 183;

/**
 * The words of the hours command: `till 22:15`, `not tonight`, `not Friday`, `today 14-18`, `on 3 May 9-12`,
 * `usual tonight`, `away 3 May..17 May`, `away till Sunday`, `back Friday`, `weekdays 18-21, Sat 9-16`,
 * `from 1 May weekdays 18-21`. What the bench was open before now stays as it was.
 */
export function readHoursWords(text: string, context: HoursContext): HoursReading {
  const words = text.trim().replace(/\s+/g, " ");
  const today = localTime(context.zone, context.now).date;
  const [, first = "", rest = ""] = /^(as usual|\S+) ?(.*)$/i.exec(words) ?? [];
  switch (first.toLowerCase()) {
    case "till":
    case "until":
      return readTill(rest, context);
    case "not":
    case "closed":
    case "off":
      return readNot(rest, context);
    case "usual":
    case "as usual":
      return readUsual(rest, context);
    case "away":
      return readAway(rest, today);
    case "back":
      return readBack(rest, today);
    case "from":
      return readFromClock(rest, context) ?? readFromDate(rest, today);
    default:
      return readOneDay(words, context) ?? readPattern(words, today);
  }
}

/** `3 May..17 May`, `3-17 May`, `till Sunday` (from today), `Friday` (that day). Both ends are away. */
function readAway(text: string, today: CivilDate): HoursReading {
  if (text === "") return { problem: `No days are said; ${AWAY_EXAMPLE}.` };
  const [start = "", end, more] = text.replace(/^from /i, "").split(SPAN);
  if (more !== undefined) return { problem: `"${text}" is more than one span of days; ${AWAY_EXAMPLE}.` };
  // "3-17 May": the month of the end is the month of both.
  const month = /^\d{1,2}$/.test(start) ? ` ${end?.replace(/^\S+ ?/, "")}` : "";
  const from = start === "" ? { date: today } : dateFromDay(start + month, today, "future");
  if ("problem" in from) return from;
  const to = end === undefined ? from : dateFromDay(end, from.date, "future");
  if ("problem" in to) return to;
  if (to.date < from.date) {
    const problem = `Days away cannot end on ${to.date}, before they begin on ${from.date}; ${AWAY_EXAMPLE}.`;
    return { problem };
  }
  // The days were likelier said the wrong way round.
  if (!/\d{4}/.test(end ?? "") && to.date > addDays(from.date, LONGEST_AWAY_DAYS)) {
    const problem = `"${text}" would be ${from.date} to ${to.date}, more than half a year; if so, write both dates like 2026-05-03.`;
    return { problem };
  }
  return { setting: { of: "away", from: from.date, to: to.date } };
}

function readBack(text: string, today: CivilDate): HoursReading {
  const read = dateFromDay(text === "" ? "today" : text, today, "future");
  return "problem" in read ? read : { setting: { of: "back", from: read.date } };
}

/** `1 May weekdays 18-21`: the longest beginning that is a date, then the pattern. */
function readFromDate(text: string, today: CivilDate): HoursReading {
  const words = text.split(" ");
  for (let count = Math.min(4, words.length); count >= 1; count--) {
    const read = dateFromDay(words.slice(0, count).join(" "), today, "future");
    if ("date" in read) return readPattern(words.slice(count).join(" "), read.date);
  }
  return { problem: `"from ${text}" names no date first; write it like from 1 May weekdays 18-21.` };
}

function readPattern(words: string, from: CivilDate): HoursReading {
  const read = readWeeklyHours(words);
  return "problem" in read ? read : { setting: { of: "hours", from, weekly: read.weekly } };
}

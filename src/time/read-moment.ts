import { addDays, instantOf, isCivilDate, localTime } from "./civil.ts";
import { readClock } from "./clock-reading.ts";
import { parseDuration } from "./duration.ts";
import { after, type CivilDate, type Instant, MINUTE } from "./instant.ts";
import { type Direction, dateFromDay, type WordsProblem } from "./read-date.ts";
import type { Zone } from "./zone.ts";

/** A bare clock reading further ahead than this is taken for yesterday's: nobody means tomorrow noon by "12:00". */
const AHEAD = 12 * 60 * MINUTE;
const ISO = /^(\d{4}-\d\d-\d\d)[T ](\d\d):?(\d\d)(?::?(\d\d)(?:[.,]\d+)?)?\s*(Z|[+-]\d\d(?::?\d\d)?)?$/i;
/** A clock reading at the end, perhaps with am or pm, after a date. */
const DATE_THEN_CLOCK = /^(.+?)[\s,]+(?:at\s+)?(\S+(?:\s*[ap]m)?)$/i;

/**
 * A moment in forgiving words: `20:15`, `yesterday 20:00`, `Tue 18:40`, `3 May 9:00`, `20m ago`, `now`, or ISO 8601 with
 * or without offset. A moment still to come is left to the caller to refuse.
 *
 * - A weekday, or a date without a year, is the last that was; with `prefer: "future"` the next to come; with "near" a
 *   weekday is the next to come, a date whichever is nearer.
 * - A bare reading is today's. More than 12 hours ahead it is yesterday's, but only where the past is preferred.
 */
export function readMoment(
  text: string,
  from: { readonly now: Instant; readonly zone: Zone; readonly prefer?: Direction },
): { instant: Instant } | WordsProblem {
  const trimmed = text.trim();
  if (/^now$/i.test(trimmed)) return { instant: from.now };
  const ago = /^(.*\S)\s+ago$/i.exec(trimmed)?.[1];
  if (ago !== undefined) return readAgo(ago, from.now);
  const iso = ISO.exec(trimmed);
  if (iso !== null) return readIso(trimmed, iso, from.zone);
  const today = localTime(from.zone, from.now).date;
  const bare = readClock(trimmed.replace(/^at\s+/i, ""));
  if (bare !== null) {
    const instant = instantOf(from.zone, today, bare);
    if ((from.prefer ?? "past") !== "past" || instant - from.now <= AHEAD) return { instant };
    return { instant: instantOf(from.zone, addDays(today, -1), bare) };
  }
  return readDated(trimmed, today, from);
}

function readAgo(text: string, now: Instant): { instant: Instant } | WordsProblem {
  const minutes = parseDuration(text);
  if (minutes !== null) return { instant: after(now, -minutes) };
  return { problem: `"${text}" before "ago" is not a duration; write it like 20m ago or 1 h 30 ago.` };
}

function readIso(text: string, found: RegExpExecArray, zone: Zone): { instant: Instant } | WordsProblem {
  const [, date = "", hour = "", minute = "", second = "0", offset] = found;
  const wrong = !isCivilDate(date) || Number(hour) > 24 || Number(minute) > 59 || Number(second) > 59;
  const minuteOfDay = Number(hour) * 60 + Number(minute);
  if (wrong || minuteOfDay > 1_440)
    return { problem: `There is no moment "${text}"; write it like 2026-03-28T14:05 or 3 May 14:05.` };
  const seconds = Number(second) * 1_000;
  if (offset === undefined) return { instant: instantOf(zone, date, minuteOfDay) + seconds };
  return { instant: Date.parse(`${date}T00:00Z`) + (minuteOfDay - readOffset(offset)) * MINUTE + seconds };
}

/** Minutes east of UTC: `Z`, `+01`, `+0530`, `-03:30`. */
function readOffset(text: string): number {
  const [, sign, hours = "0", minutes = "0"] = /^([+-])(\d\d):?(\d\d)?$/.exec(text) ?? [];
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

function readDated(
  text: string,
  today: CivilDate,
  from: { readonly zone: Zone; readonly prefer?: Direction },
): { instant: Instant } | WordsProblem {
  const prefer = from.prefer ?? "past";
  // First, or the year of "3 May 2015" would be taken for a quarter past eight.
  if ("date" in dateFromDay(text, today, prefer))
    return { problem: `"${text}" names a day but no time; say ${text} 20:00.` };
  const [, day, clock] = DATE_THEN_CLOCK.exec(text) ?? [];
  const minute = clock === undefined ? null : readClock(clock);
  if (day === undefined || minute === null)
    return {
      problem: `"${text}" is not a moment; write it like 20:15, yesterday 20:00, Tue 18:40, 3 May 9:00 or 20m ago.`,
    };
  const read = dateFromDay(day, today, prefer);
  return "problem" in read ? read : { instant: instantOf(from.zone, read.date, minute) };
}

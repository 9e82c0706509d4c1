import { monthNamed, weekdayName, weekdayNamed } from "./calendar-words.ts";
import { addDays, daysBetween, isCivilDate, localTime, weekdayOf } from "./civil.ts";
import type { CivilDate, Instant } from "./instant.ts";
import type { Zone } from "./zone.ts";

/** A word for the words it did not understand: one sentence with what is so and how to mend it. */
export interface WordsProblem {
  readonly problem: string;
}

/**
 * Which way a date without a year, or a weekday, is looked for. Today counts for all. `near`: a weekday to come, a date in
 * the year that brings it nearest.
 */
export type Direction = "future" | "past" | "near";

const NEAR_DAYS = new Map([
  ["yesterday", -1],
  ["today", 0],
  ["tonight", 0],
  ["tomorrow", 1],
]);
const ORDINAL = /(\d)(?:st|nd|rd|th)$/i;
const LONGEST_LEAP_GAP = 8;

/**
 * A date in forgiving words: `today`, `tomorrow`, `yesterday`, `Friday`, `next Friday` (the one after today),
 * `last Friday`, `3 May`, `May 3rd`, `3 May 2027`, `2026-05-03`, `in 3 days`; a date may have its weekday before it, as
 * screens have it: `Sun 3 May`.
 */
export function readDate(
  text: string,
  from: { readonly now: Instant; readonly zone: Zone; readonly prefer: Direction },
): { date: CivilDate } | WordsProblem {
  const today = localTime(from.zone, from.now).date;
  return dateFromDay(text, today, from.prefer);
}

/** As readDate, counted from a day instead of a moment: the second date of a span is read from the first. */
export function dateFromDay(
  text: string,
  today: CivilDate,
  prefer: Direction,
): { date: CivilDate } | WordsProblem {
  const words = text
    .trim()
    .split(/[\s,]+/)
    .map((word) => word.replace(ORDINAL, "$1"));
  const date = nearDay(words, today) ?? weekday(words, today, prefer) ?? calendarDate(words, today, prefer);
  if (date !== null) return { date };
  const named = weekdayNamed(words[0] ?? "");
  const rest = named === null ? null : calendarDate(words.slice(1), today, prefer);
  if (rest !== null) {
    if (weekdayOf(rest) === named) return { date: rest };
    return {
      problem: `"${text.trim()}" is not in the calendar: ${rest} is a ${weekdayName(weekdayOf(rest))}.`,
    };
  }
  const quoted = text.trim();
  if (/^\d{4}-\d{1,2}-\d{1,2}$/.test(quoted) || looksDated(words))
    return { problem: `There is no date "${quoted}" in the calendar; write it like 3 May or 2026-05-03.` };
  return {
    problem: `"${quoted}" is not a date; write it like Friday, tomorrow, 3 May or 2026-05-03.`,
  };
}

function nearDay(words: readonly string[], today: CivilDate): CivilDate | null {
  const [first = "", count = "", unit = ""] = words;
  const days = NEAR_DAYS.get(first.toLowerCase());
  if (words.length === 1 && days !== undefined) return addDays(today, days);
  if (words.length !== 3 || first.toLowerCase() !== "in" || !/^\d{1,4}$/.test(count)) return null;
  if (/^days?$/i.test(unit)) return addDays(today, Number(count));
  return /^weeks?$/i.test(unit) ? addDays(today, 7 * Number(count)) : null;
}

function weekday(words: readonly string[], today: CivilDate, prefer: Direction): CivilDate | null {
  const which = words.length === 2 ? (words[0] ?? "").toLowerCase() : "";
  const wanted = weekdayNamed(words.at(-1) ?? "");
  if (wanted === null || words.length > 2 || (words.length === 2 && !/^(this|next|last|on)$/.test(which)))
    return null;
  const ahead = (wanted - weekdayOf(today) + 7) % 7;
  if (which === "next") return addDays(today, ahead === 0 ? 7 : ahead);
  if (which === "last") return addDays(today, ahead === 0 ? -7 : ahead - 7);
  const back = which === "" || which === "on" ? prefer === "past" : false;
  return addDays(today, back && ahead > 0 ? ahead - 7 : ahead);
}

function calendarDate(words: readonly string[], today: CivilDate, prefer: Direction): CivilDate | null {
  const [only = ""] = words;
  return words.length === 1 && isCivilDate(only) ? only : dayAndMonth(words, today, prefer);
}

function dayAndMonth(words: readonly string[], today: CivilDate, prefer: Direction): CivilDate | null {
  const parts = words[0]?.toLowerCase() === "on" ? words.slice(1) : words;
  const [first = "", second = "", year] = parts;
  const dayFirst = /^\d{1,2}$/.test(first);
  const month = monthNamed(dayFirst ? second : first);
  const day = dayFirst ? first : second;
  if (month === null || !/^\d{1,2}$/.test(day) || parts.length > 3) return null;
  const monthAndDay = `${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;
  if (year !== undefined) {
    const date = `${year}-${monthAndDay}`;
    return isCivilDate(date) ? date : null;
  }
  const thisYear = Number(today.slice(0, 4));
  if (prefer === "near") {
    const dates = [thisYear - 1, thisYear, thisYear + 1].map((near) => `${near}-${monthAndDay}`);
    const apart = (date: CivilDate): number => Math.abs(daysBetween(today, date));
    const [nearest] = dates.filter(isCivilDate).toSorted((a, b) => apart(a) - apart(b));
    if (nearest !== undefined) return nearest;
  }
  const step = prefer === "past" ? -1 : 1;
  // 29 February may be as far as eight years off (round 1900 and 2100).
  for (let away = 0; away <= LONGEST_LEAP_GAP; away++) {
    const date = `${String(thisYear + step * away).padStart(4, "0")}-${monthAndDay}`;
    if (isCivilDate(date) && (prefer === "past" ? date <= today : date >= today)) return date;
  }
  return null;
}

function looksDated(words: readonly string[]): boolean {
  return words.some((word) => /^\d{1,2}$/.test(word)) && words.some((word) => monthNamed(word) !== null);
}

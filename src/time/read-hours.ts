import type { DayHours, WeeklyHours } from "./bench-hours.ts";
import { weekdayNamed } from "./calendar-words.ts";
import { readClock } from "./clock-reading.ts";
import type { WordsProblem } from "./read-date.ts";

const DAY_GROUPS: Readonly<Record<string, readonly number[]>> = {
  daily: [1, 2, 3, 4, 5, 6, 7],
  weekday: [1, 2, 3, 4, 5],
  weekdays: [1, 2, 3, 4, 5],
  weekend: [6, 7],
  weekends: [6, 7],
};
const CLOSED = /^(?:closed|off|shut|none)$/i;
const EXAMPLE = "write it like weekdays 18-21, Sat 9-16";

/**
 * A weekly pattern in forgiving words: `weekdays 18-21, Sat 9-16`, `Mon Wed 18:00-21:30`, `Mon-Thu 6pm-9pm`,
 * `daily 9-17, Sun closed`, `Sat 9-12 13-16`. Days not named are closed. A day named again has both sessions
 * (`Sat 9-12, Sat 13-16`); picked out of more days (`weekdays 18-21, Fri 17-20`) or closed it takes the later
 * words. A closing at or before the opening is the next day's: `22-2` is four hours.
 */
export function readWeeklyHours(text: string): { weekly: WeeklyHours } | WordsProblem {
  const read = readNamedHours(text);
  if ("problem" in read) return read;
  return { weekly: [1, 2, 3, 4, 5, 6, 7].map((day) => read.days.get(day) ?? []) };
}

/** The same for the weekdays that are named (1 is Monday), and nothing of the others. */
export function readNamedHours(
  text: string,
): { days: ReadonlyMap<number, readonly DayHours[]> } | WordsProblem {
  const read = readNamings(text);
  if ("problem" in read) return read;
  const days = new Map<number, readonly DayHours[]>();
  /** Of how many days each was last named. */
  const among = new Map<number, number>();
  for (const naming of read.namings) {
    for (const day of naming.days) {
      const pickedOut = naming.days.length < (among.get(day) ?? 0);
      const before = pickedOut || naming.hours.length === 0 ? [] : (days.get(day) ?? []);
      const hours = [...before, ...naming.hours].sort((one, other) => one.opens - other.opens);
      const wrong = overlap(hours);
      if (wrong !== null) return wrong;
      days.set(day, hours);
      among.set(day, naming.days.length);
    }
  }
  return { days };
}

/** Days said together and their hours, in the order they are said in; no hours: closed. */
interface Naming {
  readonly days: readonly number[];
  readonly hours: readonly DayHours[];
}

function readNamings(text: string): { namings: readonly Naming[] } | WordsProblem {
  const words = splitWords(text);
  const namings: Naming[] = [];
  let days: readonly number[] = [];
  let hours: DayHours[] | null = null;
  for (const word of words) {
    const named = readDays(word);
    if (named !== null) {
      days = [...new Set(hours === null ? [...days, ...named] : named)];
      hours = null;
      continue;
    }
    const stretch = CLOSED.test(word) ? null : readStretch(word);
    if (stretch !== null && "problem" in stretch) return stretch;
    if (days.length === 0) return { problem: `"${word}" stands before any day; ${EXAMPLE}.` };
    if (hours === null) {
      hours = [];
      namings.push({ days, hours });
    }
    if (stretch !== null) hours.push(stretch);
    const wrong = overlap(hours);
    if (wrong !== null) return wrong;
  }
  if (words.length === 0) return { problem: `No hours are said; ${EXAMPLE}.` };
  if (hours === null) return { problem: `"${text.trim()}" ends with a day that has no hours; ${EXAMPLE}.` };
  return { namings };
}

/** Weekdays alone: `Sat`, `weekend`, `Mon Wed`, `Fri-Mon`, `Mondays and Fridays`. Null: other words stand among them. */
export function readWeekdays(text: string): readonly number[] | null {
  const read = splitWords(text).map(readDays);
  return read.length > 0 && read.every((days) => days !== null) ? [...new Set(read.flat())] : null;
}

/** The stretches of one day, `9-12 13-16` or `closed`. */
export function readDayHours(text: string): { hours: readonly DayHours[] } | WordsProblem {
  const hours: DayHours[] = [];
  const words = splitWords(text);
  if (words.length === 1 && CLOSED.test(words[0] ?? "")) return { hours };
  for (const word of words) {
    const stretch = readStretch(word);
    if ("problem" in stretch) return stretch;
    hours.push(stretch);
  }
  if (hours.length === 0) return { problem: "No hours are said; write them like 18-21 or 9-12 13-16." };
  return overlap(hours) ?? { hours };
}

/** Words with each span pulled together (`18 to 21`, `6 pm – 9 pm`), and without commas and the word "and". */
function splitWords(text: string): string[] {
  return text
    .replace(/\bevery\s*day\b/gi, "daily")
    .replace(/(\d)\s+([ap]m)\b/gi, "$1$2")
    .replace(/\s*(?:\.\.|[-–—]|\b(?:to|till|until)\b)\s*/gi, "-")
    .split(/[\s,;&]+/)
    .filter((word) => word !== "" && !/^(?:and|open)$/i.test(word));
}

/** Days a word names: a group, a weekday, or a span of weekdays round the week's end (`Fri-Mon`). */
function readDays(word: string): readonly number[] | null {
  const bare = word.toLowerCase().replace(/:$/, "");
  const group = Object.hasOwn(DAY_GROUPS, bare) ? DAY_GROUPS[bare] : undefined;
  if (group !== undefined) return group;
  const [from, to, more] = bare.split("-").map((name) => weekdayNamed(name) ?? weekdayNamed(singular(name)));
  if (from === null || from === undefined || to === null || more !== undefined) return null;
  if (to === undefined) return [from];
  return Array.from({ length: ((to - from + 7) % 7) + 1 }, (_, index) => ((from - 1 + index) % 7) + 1);
}

/** `mondays` is as good as `monday`. */
function singular(name: string): string {
  return name.replace(/s$/, "");
}

function readStretch(word: string): DayHours | WordsProblem {
  const [first = "", second, more] = word.split("-");
  const opens = readClock(first);
  const closes = second === undefined ? null : readClock(second);
  if (opens === null || closes === null || more !== undefined)
    return { problem: `"${word}" is neither a day nor hours; ${EXAMPLE}.` };
  if (opens === 1_440) return { problem: `"${word}" opens as the day ends; say 0:00 of the next day.` };
  return { opens, closes: closes <= opens ? closes + 1_440 : closes };
}

function overlap(hours: readonly DayHours[]): WordsProblem | null {
  const [first] = hours;
  const wrong = hours.some((stretch, index) => index > 0 && stretch.opens < (hours[index - 1]?.closes ?? 0));
  const long = first !== undefined && (hours.at(-1)?.closes ?? 0) > first.opens + 1_440;
  if (!wrong && !long) return null;
  return { problem: "The hours of one day overlap or are out of order; write them like 9-12 13-16." };
}

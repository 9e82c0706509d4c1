import type { Minutes } from "./instant.ts";

/** The longest duration taken or printed, a hundred years: a moment counted from it is still a date. */
export const LONGEST: Minutes = 36_525 * 1_440;

const MINUTES_PER = { w: 10_080, d: 1_440, h: 60, m: 1, s: 1 / 60 } as const;
type Unit = keyof typeof MINUTES_PER;

const UNIT_WORDS: Readonly<Record<string, Unit>> = {
  w: "w",
  wk: "w",
  week: "w",
  weeks: "w",
  d: "d",
  day: "d",
  days: "d",
  h: "h",
  hr: "h",
  hrs: "h",
  hour: "h",
  hours: "h",
  m: "m",
  min: "m",
  mins: "m",
  minute: "m",
  minutes: "m",
};

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
/** ISO 8601-1 and RFC 5545: weeks stand alone; no years or months, whose length depends on the date. */
const ISO = new RegExp(
  String.raw`^\+?P(?:(${NUMBER})W|(?:(${NUMBER})D)?(?:T(?:(${NUMBER})H)?(?:(${NUMBER})M)?(?:(${NUMBER})S)?)?)$`,
  "i",
);
const ISO_UNITS: readonly Unit[] = ["w", "d", "h", "m", "s"];
const PART = new RegExp(String.raw`\s*(${NUMBER})\s*([a-z]*)`, "giy");

/**
 * Whole minutes of a duration as people write it (`20 min`, `4 h`, `1 h 30`, `1h30`, `2 d`) or as ISO 8601
 * and RFC 5545 do (`PT4H`, `P2DT3H30M`, `P1W`). Null: not a duration, not whole minutes, signed, over
 * LONGEST, or in years and months.
 * `parseDuration("1 h 30") === 90`
 */
export function parseDuration(text: string): Minutes | null {
  const trimmed = text.trim();
  const parts = /^\+?p/i.test(trimmed) ? readIso(trimmed) : readSpoken(trimmed);
  if (parts === null || parts.length === 0) return null;
  // A fraction may stand only in the last, smallest part: the rule of ISO 8601.
  if (parts.slice(0, -1).some((part) => !Number.isInteger(part.count))) return null;
  const sum = parts.reduce((total, part) => total + part.count * MINUTES_PER[part.unit], 0);
  const minutes = Math.round(sum);
  // Thirds of an hour and seconds make sums that are whole but for rounding in binary.
  return Math.abs(sum - minutes) < 1e-6 && minutes <= LONGEST ? minutes : null;
}

interface DurationPart {
  readonly count: number;
  readonly unit: Unit;
}

function readIso(text: string): DurationPart[] | null {
  const found = ISO.exec(text);
  if (found === null || /T$/i.test(text)) return null;
  return ISO_UNITS.flatMap((unit, index) => {
    const digits = found[index + 1];
    return digits === undefined ? [] : [{ count: readNumber(digits), unit }];
  });
}

/** Parts from the greatest unit down; a bare number after hours is minutes (`1 h 30`). */
function readSpoken(text: string): DurationPart[] | null {
  const parts: DurationPart[] = [];
  let end = 0;
  for (const [whole, digits = "", word = ""] of text.matchAll(PART)) {
    const before = parts.at(-1)?.unit;
    const unit = word === "" ? (before === "h" ? "m" : undefined) : unitNamed(word.toLowerCase());
    if (unit === undefined) return null;
    if (before !== undefined && MINUTES_PER[unit] >= MINUTES_PER[before]) return null;
    parts.push({ count: readNumber(digits), unit });
    end += whole.length;
  }
  return end === text.length ? parts : null;
}

function readNumber(digits: string): number {
  return Number(digits.replace(",", "."));
}

/**
 * A duration as the screens say it. Days only from 48 h on, so that "30 h" is not read as a day and a bit.
 * It always parses back to the same minutes.
 * `formatDuration(5) === "5 min"`, `formatDuration(90) === "1 h 30"`, `formatDuration(3060) === "2 d 3 h"`
 * @throws RangeError if `minutes` is not a whole number from 0 to LONGEST.
 */
export function formatDuration(minutes: Minutes): string {
  if (!Number.isInteger(minutes) || minutes < 0 || minutes > LONGEST) {
    throw new RangeError(`a duration is whole minutes from 0 to ${LONGEST}, not ${minutes}`);
  }
  const days = minutes >= 2 * MINUTES_PER.d ? Math.floor(minutes / MINUTES_PER.d) : 0;
  const rest = minutes - days * MINUTES_PER.d;
  const hours = Math.floor(rest / 60);
  const left = rest % 60;
  const said: string[] = [];
  if (days > 0) said.push(`${days} d`);
  if (hours > 0) said.push(`${hours} h`);
  if (left > 0 && hours > 0) said.push(String(left).padStart(2, "0"));
  else if (left > 0 || said.length === 0) said.push(`${left} min`);
  return said.join(" ");
}

/** Whatever every object has beside its own words is no unit. */
function unitNamed(word: string): Unit | undefined {
  return Object.hasOwn(UNIT_WORDS, word) ? UNIT_WORDS[word] : undefined;
}

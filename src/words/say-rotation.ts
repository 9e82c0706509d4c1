import type {
  Impossible,
  InThisAir,
  NoRotation,
  RotationAnswer,
  Timetable,
} from "../plan/rotation/rotation-answer.ts";
import { layOut } from "./lay-out.ts";
import { plainText } from "./plain-text.ts";
import { sayCount, sayList } from "./say-list.ts";
import { sayPace } from "./say-pace.ts";
import { sayChanges } from "./say-rotation-changes.ts";
import { sayAgo, sayRotationDay } from "./say-rotation-day.ts";
import { sayBenchTime, sayClockOfDay, sayWait } from "./say-time.ts";
import { wrapTo } from "./width.ts";

/** Lines of text break here where the terminal is no narrower. */
const WIDE = 80;

/**
 * A rotation to read and to hang up: what a piece takes, the quickest pace for each number out, the timetable of one
 * pace, and what would change it.
 *
 * @param hours the bench hours in words
 */
export function sayRotation(
  answer: RotationAnswer,
  hours: string,
  clock24: boolean,
  columns: number | null,
): string[] {
  const { timetable, round, work } = answer;
  const wide = Math.min(columns ?? WIDE, WIDE);
  const title = `${answer.process} in rotation, ${hours}`;
  const takes = `A piece takes ${sayWait(work.handsOn)} hands-on${
    work.looks === 0 ? "" : `, ${sayCount(work.looks, "look")}`
  }${work.setUp === 0 ? "" : ` and up to ${sayWait(work.setUp)} of setting up`}.`;
  const paragraphs = [
    [title, takes],
    sayTable(answer),
    timetable.is === "timetable"
      ? sayTimetable(timetable)
      : [`${sayPace(answer.pace)}: ${sayImpossible(timetable)}.${sayQuicker(answer)}`],
    ...(timetable.is === "timetable"
      ? timetable.days.map((day) => sayRotationDay(day, timetable, round.every, { clock24, columns }))
      : []),
    sayChanges(answer),
    sayUnfitHours(answer, clock24),
    sayHowReckoned(answer),
  ];
  return paragraphs
    .filter((lines) => lines.length > 0)
    .flatMap((lines, index) => (index === 0 ? lines : ["", ...lines]))
    .flatMap((line) => (line.startsWith(" ") ? [line] : wrapTo(plainText(line), wide)));
}

/** Why no rotation was looked for at all. */
export function sayNoRotation(none: Exclude<NoRotation, InThisAir>): string {
  if (none.because === "never open") return "the bench is never open in these hours";
  return plainText(
    `${none.step} needs ${sayWait(none.minutes)} at a stretch with setting up and putting away, and no bench session is longer than ${sayWait(none.longest)}`,
  );
}

/** A pace that was asked for and cannot be, with what could; a sentence each, without full stops. */
export function sayRefusedPace(answer: RotationAnswer): string[] {
  const { timetable, pace, table, tableCut } = answer;
  if (timetable.is === "timetable") return [];
  const quickest = table.at(-1);
  const could = sayChanges(answer).slice(1);
  return [
    `${answer.process}, ${sayPace(pace)}: ${sayImpossible(timetable)}`,
    ...(quickest === undefined
      ? []
      : [`the quickest ${tableCut ? "found" : "there is"}: ${sayPace(quickest.pace)}, ${quickest.out} out`]),
    ...(could.length === 0
      ? []
      : [`it would be possible with ${could.map((line) => line.trim()).join("; or ")}`]),
  ];
}

/** So few may be out that no pace was found for it; without a full stop. */
export function sayTooFewOut({ process, table }: RotationAnswer, out: number): string {
  const [fewest] = table;
  const found = fewest === undefined ? "" : `; the fewest found: ${fewest.out} out, ${sayPace(fewest.pace)}`;
  return `${process}: no pace was found with ${out} out${found}`;
}

/** Why there is no timetable for a pace. */
function sayImpossible({ is, why }: Impossible): string {
  switch (why.because) {
    case "hands":
      return `impossible: it takes at least ${sayBenchTime(why.needed)} of bench time in each round, and the bench is open ${sayBenchTime(why.open)}`;
    case "hooks":
      return `impossible: pieces hang longer at ${why.place} than its ${sayCount(why.hooks, "hook")} can hold`;
    case "together":
      return "impossible: within these hours no order of the steps keeps to the waits, windows, set-ups and keep-aparts, proven";
    case "time was over":
      return is === "impossible" ? "impossible" : "none was found in the time; that proves nothing";
  }
}

/** A pace of the table that is no slower than the one that was not found. */
function sayQuicker({ table, pace }: RotationAnswer): string {
  const row = table.find((one) => one.pace.pieces * pace.days >= pace.pieces * one.pace.days);
  return row === undefined ? "" : ` A quicker one there is: ${sayPace(row.pace)}, ${row.out} out.`;
}

function sayTable({ table, tableCut }: RotationAnswer): string[] {
  if (table.length === 0) return [];
  const lines = layOut(
    table.map(({ out, pace, proven }) => [`${out} out`, sayPace(pace), proven ? "proven" : "best found"]),
    null,
  );
  return [
    "The quickest pace for a number out, counted to the last hands-on:",
    ...lines,
    ...(tableCut ? ["  quicker ones were not searched to the end"] : []),
  ];
}

/** What the timetable takes, counted both ways. */
function sayTimetable(timetable: Timetable): string[] {
  const { pace, out, outToDryThrough, span, dryThrough, proven, leastOut, leastSpan } = timetable;
  const count = `${sayPace(pace)}: ${out} out, counted to the last hands-on${
    outToDryThrough === null ? "" : `; ${outToDryThrough} counted to dry-through`
  }`;
  const each = (minutes: number): string => sayDays(minutes / pace.pieces);
  const takes = `${pace.pieces === 1 ? "A piece has its last hands-on" : "On average the last hands-on comes"} ${each(span)} after its first${
    dryThrough === null ? "" : ` and is dry-through ${each(dryThrough)} after it`
  }`;
  const quality = proven
    ? "No timetable takes less: proven"
    : out === leastOut
      ? `None has fewer out: proven. What a piece takes is not: none takes less than ${each(leastSpan)}`
      : `Not proven: none has fewer than ${leastOut} out, nor less than ${each(leastSpan)} a piece`;
  return [`${count}.`, `${takes}. ${quality}.`, sayWhose(timetable)];
}

/** What the last column of the cards says. */
function sayWhose({ pace: { pieces, days } }: Timetable): string {
  if (pieces === 1) return "Each line says of which piece, by when that was begun.";
  const last = String.fromCharCode(64 + pieces);
  const all = pieces === 2 ? "A and B" : `A to ${last}`;
  const round = days === 7 ? "week" : "round";
  return `${all} are the pieces of one ${round} in the order they are begun; a piece "of ${sayAgo(days)}" was begun the ${round} before.`;
}

/** Long spans in days and hours. `sayDays(3256) === "2 days 6 h"` */
export function sayDays(minutes: number): string {
  const hours = Math.round(minutes / 60);
  if (hours < 48) return sayWait(minutes);
  const rest = hours % 24;
  return `${sayCount(Math.floor(hours / 24), "day")}${rest === 0 ? "" : ` ${rest} h`}`;
}

function sayUnfitHours({ unfitAir }: RotationAnswer, clock24: boolean): string[] {
  if (unfitAir.length === 0) return [];
  const each = unfitAir.map(({ step, from, until }) => {
    return `${step} ${sayClockOfDay(from, clock24)}-${sayClockOfDay(until, clock24)}`;
  });
  return [`Not done at these hours, for the air is unfit for the coat then: ${sayList(each)}.`];
}

function sayHowReckoned({ withoutPreparation, timetable, round, table }: RotationAnswer): string[] {
  if (timetable.is !== "timetable") return [];
  const counted = round.every === "week" ? "whole pieces a week" : "one every so many days, or 3 in 2, or 2";
  const inTable = table.some(({ proven }) => proven)
    ? ` "Proven" in the table: with so many out no quicker pace (${counted}) can be kept.`
    : "";
  const prepared =
    withoutPreparation.length === 0
      ? ""
      : ` Where you miss a window (before ${sayList(withoutPreparation, "or")}), the preparation that it then asks for comes on top.`;
  return [
    `Reckoned with usual minutes, the longest wait and the shortest window of the day.${prepared}${inTable}`,
  ];
}

import type { RotationDay, RotationRow, Timetable } from "../plan/rotation/rotation-answer.ts";
import { layOut } from "./lay-out.ts";
import { plainText } from "./plain-text.ts";
import { sayList } from "./say-list.ts";
import { sayClockOfDay, sayWait, sayWeekday } from "./say-time.ts";
import { wrapTo } from "./width.ts";

const WIDE = 80;
const MARGIN = "  ";

interface Look {
  readonly clock24: boolean;
  readonly columns: number | null;
}

/** One bench session of a rotation as a card: times of the day, each with its step and of which piece. */
export function sayRotationDay(
  day: RotationDay,
  timetable: Timetable,
  every: "day" | "week",
  { clock24, columns }: Look,
): string[] {
  const clock = (minutes: number): string => sayClockOfDay(minutes, clock24);
  const head = `${nameOfDay(day, timetable, every)} ${clock(day.opens)}-${clock(day.closes)}`;
  if (day.rows.length === 0) return [`${head}: nothing`];
  const rows = day.rows.flatMap((row) => {
    const { minutes, setUp } = row;
    const made = setUp?.minutes ?? 0;
    const piece = whichPiece(row, timetable);
    const station = plainText(row.station);
    const own = [
      clock(row.from + made),
      plainText(whatOf(row)),
      row.part === "look" ? "" : sayWait(minutes),
      row.part === "look" ? "" : station,
      piece,
    ];
    return made === 0
      ? [own]
      : [[clock(row.from), plainText(setUp?.what ?? ""), sayWait(made), station, ""], own];
  });
  const away = day.putAway.map(({ setUp, minutes }) => `${setUp} (${sayWait(minutes)})`);
  const wide = Math.min(columns ?? WIDE, WIDE) - MARGIN.length;
  const last = plainText(`before you shut, put away: ${sayList(away)}`);
  const putAway = away.length === 0 ? [] : wrapTo(last, wide).map((line) => MARGIN + line);
  return [head, ...layOut(rows, columns), ...putAway];
}

function nameOfDay({ day }: RotationDay, { pace }: Timetable, every: "day" | "week"): string {
  if (every === "week") {
    const weeks = pace.days / 7;
    const week = weeks > 1 ? ` of week ${Math.floor(day / 7) + 1}` : "";
    return `${sayWeekday((day % 7) + 1)}${week}`;
  }
  return pace.days === 1 ? "Every day" : `Day ${day + 1} of ${pace.days}`;
}

function whatOf({ part, step, colour, split, setUp }: RotationRow): string {
  if (part === "look") return `look at ${step}`;
  const name = part === "preparation" ? `prepare for ${step}` : step;
  const kept = setUp !== null && setUp.minutes === 0 ? `, ${withoutVerb(setUp.what)} kept` : "";
  return `${name}${colour === null ? "" : ` ${colour}`}${split === null ? "" : `, part ${split}`}${kept}`;
}

/** `mix clear` as a thing: `clear`. */
function withoutVerb(what: string): string {
  return what.replace(/^\S+ /, "");
}

/** Which piece it is of, by when it was begun. */
function whichPiece({ piece, ago }: RotationRow, { pace }: Timetable): string {
  if (pace.pieces === 1) {
    const days = ago * pace.days;
    if (days === 0) return pace.days === 1 ? "today's piece" : "the new piece";
    return days === 1 ? "yesterday's" : `of ${sayAgo(days)}`;
  }
  const name = String.fromCharCode(65 + piece);
  if (ago === 0) return name;
  return `${name} of ${sayAgo(ago * pace.days)}`;
}

/** So many whole days before. `sayAgo(7) === "last week"` */
export function sayAgo(days: number): string {
  if (days === 1) return "yesterday";
  if (days % 7 > 0) return `${days} days ago`;
  return days === 7 ? "last week" : `${days / 7} weeks ago`;
}

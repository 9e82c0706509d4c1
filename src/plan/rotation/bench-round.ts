import type { DayHours, WeeklyHours } from "../../time/bench-hours.ts";
import type { Minutes } from "../../time/instant.ts";
import type { Circle } from "./circle.ts";

const DAY: Minutes = 1_440;

/** Bench hours that come round: each day where all days are alike, else each week. */
export interface BenchRound {
  readonly every: "day" | "week";
  /** Minutes of one round. */
  readonly minutes: Minutes;
  /** The clock (minutes after Monday 00:00, or after midnight) at minute 0 of the circle: the bench is shut then. */
  readonly begins: Minutes;
  /** In minutes of the circle. */
  readonly sessions: Circle["sessions"];
}

/**
 * A weekly pattern as a round. The circle is cut at an opening, so that a session past midnight stays whole; where one
 * runs into the next, it ends there.
 *
 * @returns null: the bench is never open
 */
export function benchRound(weekly: WeeklyHours): BenchRound | null {
  const alike = weekly.every((day) => JSON.stringify(day) === JSON.stringify(weekly[0]));
  const days = alike ? weekly.slice(0, 1) : weekly;
  const minutes = days.length * DAY;
  const opened = days.flatMap((hours, day) => hours.map((one) => inWeek(one, day)));
  const [first] = opened.sort((one, other) => one.opens - other.opens);
  if (first === undefined) return null;
  const sessions = opened.map(({ opens, closes }, index) => {
    const next = opened[index + 1]?.opens ?? first.opens + minutes;
    return { opens: opens - first.opens, closes: Math.min(closes, next) - first.opens };
  });
  return { every: alike ? "day" : "week", minutes, begins: first.opens, sessions };
}

function inWeek({ opens, closes }: DayHours, day: number): { opens: Minutes; closes: Minutes } {
  return { opens: day * DAY + opens, closes: day * DAY + closes };
}

/** So many rounds on end. */
export function repeatRound({ minutes, sessions }: BenchRound, times: number): Circle["sessions"] {
  return Array.from({ length: times }, (_, round) =>
    sessions.map(({ opens, closes }) => ({
      opens: opens + round * minutes,
      closes: closes + round * minutes,
    })),
  ).flat();
}

/** Minutes the bench is open in one round. */
export function openMinutes({ sessions }: BenchRound): Minutes {
  return sessions.reduce((sum, { opens, closes }) => sum + closes - opens, 0);
}

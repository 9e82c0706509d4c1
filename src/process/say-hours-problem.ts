import { weekdayName } from "../time/calendar-words.ts";
import { formatDuration } from "../time/duration.ts";
import type { HoursProblem, WeekTime } from "./check-hours.ts";

/**
 * What the bench hours make impossible, in one sentence with weekdays and times.
 * `"seal" hung Saturday 11:53 to 16:00: "second seal" cannot be begun in time (hung 11:53 it opens Saturday 15:53 and
 * shuts Sunday 12:53, the bench opens Monday 18:00); hang it at another time, or count on a scuff`
 */
export function sayHoursProblem(problem: HoursProblem): string {
  switch (problem.kind) {
    case "never open":
      return "the bench does not open at all in these four weeks; say your hours";
    case "step too long":
      return (
        `"${problem.step}" takes ${formatDuration(problem.minutes)} with its set-up and putting away, longer than any ` +
        `session (the longest is ${formatDuration(problem.longest)}); split the step, or open the bench for longer`
      );
    case "window missed":
      return sayMissed(problem);
  }
}

function sayMissed(problem: HoursProblem & { kind: "window missed" }): string {
  const hung =
    problem.from === problem.to
      ? sayClock(problem.from)
      : `${sayClock(problem.from)} to ${sayClock(problem.to)}`;
  const again =
    problem.reopens === null
      ? "the bench does not open in sight"
      : `the bench opens ${sayTime(problem.reopens)}`;
  return (
    `"${problem.step}" hung ${sayDays(problem.weekdays)} ${hung}: "${problem.next}" cannot be begun in time ` +
    `(hung ${sayClock(problem.from)} it opens ${sayTime(problem.opens)} and shuts ${sayTime(problem.shuts)}, ${again}); ` +
    sayRemedy(problem)
  );
}

function sayRemedy({ always, first }: HoursProblem & { kind: "window missed" }): string {
  const later = first === null ? "no later window follows" : `count on a ${first}`;
  if (always) return `no session of the week is early enough: ${later}`;
  return first === null ? `hang it at another time, for ${later}` : `hang it at another time, or ${later}`;
}

/** From Monday on; three days or more in a row are said by the first and the last. */
function sayDays(found: readonly number[]): string {
  const weekdays = found.toSorted((a, b) => a - b);
  const names = weekdays.map(weekdayName);
  const inRow = weekdays.every((weekday, index) => index === 0 || weekday === (weekdays[index - 1] ?? 0) + 1);
  return inRow && names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(", ");
}

function sayTime({ weekday, minute }: WeekTime): string {
  return `${weekdayName(weekday)} ${sayClock(minute)}`;
}

function sayClock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
}

import type { PlanAnswer, PlannedSession, PlanQuality } from "../plan/plan-answer.ts";
import { layOut } from "./lay-out.ts";
import { sayForecasts } from "./say-forecast.ts";
import { sayCount } from "./say-list.ts";
import { sayChanges } from "./say-plan-changes.ts";
import { type PlannedRowWords, sayPlannedRow, sayPlannedSession, sayPutAway } from "./say-planned-row.ts";
import { sayDayAndClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";
import { fitTo, widthOf, wrapTo } from "./width.ts";

/** Fewer cells beside a row are no place for words. */
const LEAST_BESIDE = 18;
/** So far in stands the rest of a row that goes on below. */
const BELOW = 9;

/**
 * The coming days, a line each: how good the plan is, what a what-if changes, each bench session with its work, then
 * when each piece is finished, what is late and why.
 *
 * @param columns width to keep to; null: nothing is cut
 */
export function sayPlan(plan: PlanAnswer, speech: Speech, columns: number | null): string[] {
  const { sessions, days, assumedHours } = plan;
  const planned = sessions.some(({ rows }) => rows.length > 0);
  const assumed = assumedHours ? ["Bench hours are assumed: say yours with dryline hours."] : [];
  const nothing = [
    plan.pieces.length === 0
      ? 'Nothing is out. Begin one: dryline tag "carved walker"; dryline process lists them.'
      : sessions.length === 0
        ? `The bench is shut ${days === 1 ? "all day" : `all ${days} days`}: nothing can be planned.`
        : `Nothing can be worked in ${sayCount(days, "day")}.`,
  ];
  const lines = [
    `${sayDayAndClock(plan.at, speech)}, ${days === 1 ? "this day" : `${days} days`}: ${sayQuality(plan.quality)}`,
    ...plan.quality.broken.map((rule) => `It breaks a rule (${rule}): take it with care.`),
    ...assumed,
    ...(plan.changes === null || plan.whatIf === null ? [] : sayChanges(plan.changes, plan.whatIf, speech)),
    ...(planned ? sayTimetable(sessions, speech, columns) : ["", ...nothing]),
    ...sayForecasts(plan.pieces, speech, columns),
  ];
  return columns === null ? lines : lines.flatMap((line) => wrapBelow(line, columns));
}

/** A line that is too long goes on below, two cells further in. */
function wrapBelow(line: string, columns: number): string[] {
  if (widthOf(line) <= columns) return [line];
  const margin = line.length - line.trimStart().length + 2;
  const [first = "", ...more] = wrapTo(line.trim(), columns - margin);
  return [" ".repeat(margin - 2) + first, ...more.map((text) => " ".repeat(margin) + text)];
}

/**
 * How far it can be from the best plan.
 *
 * @example sayQuality(quality) // "at most 4 % over the best"
 */
export function sayQuality({ basis, proven, gapPercent }: PlanQuality): string {
  if (basis === "dispatch") return "made by the simple rule: the plan found did not pass its check";
  if (proven || gapPercent === 0) return "proven, no plan is better";
  return gapPercent === null ? "not proven best" : `at most ${gapPercent} % over the best`;
}

/** All rows share their columns, so that the eye runs down the days; what is long goes on below. */
function sayTimetable(sessions: readonly PlannedSession[], speech: Speech, columns: number | null): string[] {
  const said = sessions.map(({ rows }) => rows.map((row) => sayPlannedRow(row, speech)));
  const lines = layOut(
    said.flat().map(({ from, who, what, minutes }) => [from, who, what, minutes]),
    columns,
  );
  const margin = Math.max(0, ...lines.map(widthOf)) + 2;
  let next = 0;
  return sessions.flatMap((session, index) => [
    "",
    sayPlannedSession(session, speech),
    ...(said[index] ?? []).flatMap((row) => addRest(lines[next++] ?? "", sayRest(row), margin, columns)),
    ...sayPutAway(session, speech).map((line) => `  ${line}`),
  ]);
}

function sayRest({ station, setUp, look, by, inHand, finishes }: PlannedRowWords): string {
  return [inHand, by, finishes, station, setUp, look].filter((text) => text !== "").join(", ");
}

/** Puts the rest of a row beside its line; below it, where there is too little room for it there. */
function addRest(line: string, rest: string, margin: number, columns: number | null): string[] {
  if (columns === null) return [fitTo(line, margin) + rest];
  const room = columns - margin;
  if (room < Math.min(LEAST_BESIDE, widthOf(rest)))
    return [line, ...wrapTo(rest, columns - BELOW).map((text) => " ".repeat(BELOW) + text)];
  const [first = "", ...more] = wrapTo(rest, room);
  return [fitTo(line, margin) + first, ...more.map((text) => " ".repeat(margin) + text)];
}

import type { PlanAnswer, PlannedSession, PlanQuality } from "../plan/plan-answer.ts";
import { layOutWithRest } from "./lay-out.ts";
import { sayForecasts } from "./say-forecast.ts";
import { sayCount } from "./say-list.ts";
import { sayChanges } from "./say-plan-changes.ts";
import { type PlannedRowWords, sayPlannedRow, sayPlannedSession, sayPutAway } from "./say-planned-row.ts";
import { sayDayAndClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";
import { widthOf, wrapTo } from "./width.ts";

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

/** All rows share their columns, so that the eye runs down the days. */
function sayTimetable(sessions: readonly PlannedSession[], speech: Speech, columns: number | null): string[] {
  const rows = sessions.flatMap((session) => session.rows).map((row) => sayPlannedRow(row, speech));
  const lines = layOutWithRest(
    rows.map((row) => ({ cells: [row.from, row.who, row.what, row.minutes], rest: sayRest(row) })),
    columns,
  );
  let next = 0;
  return sessions.flatMap((session) => {
    const first = next;
    next += session.rows.length;
    return [
      "",
      sayPlannedSession(session, speech),
      ...lines.slice(first, next).flat(),
      ...sayPutAway(session, speech).map((line) => `  ${line}`),
    ];
  });
}

function sayRest({ station, setUp, look, measure, by, inHand, finishes }: PlannedRowWords): string {
  return [inHand, by, finishes, station, measure, setUp, look].filter((text) => text !== "").join(", ");
}

import type { PlanAnswer, PlannedSession, PlanQuality } from "../plan/plan-answer.ts";
import { layOut } from "./lay-out.ts";
import { sayForecasts } from "./say-forecast.ts";
import { sayCount } from "./say-list.ts";
import { sayChanges } from "./say-plan-changes.ts";
import { sayPlannedRow, sayPlannedSession, sayPutAway } from "./say-planned-row.ts";
import { sayDayAndClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

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
  return [
    `${sayDayAndClock(plan.at, speech)}, ${days === 1 ? "this day" : `${days} days`}: ${sayQuality(plan.quality)}`,
    ...plan.quality.broken.map((rule) => `It breaks a rule (${rule}): take it with care.`),
    ...assumed,
    ...(plan.changes === null ? [] : sayChanges(plan.changes, speech)),
    ...(planned ? sayTimetable(sessions, speech, columns) : ["", ...nothing]),
    ...sayForecasts(plan.pieces, speech, columns),
  ];
}

/**
 * How far it can be from the best plan.
 *
 * @example sayQuality(quality) // "at most 4 % from the best plan"
 */
export function sayQuality({ basis, proven, gapPercent }: PlanQuality): string {
  if (basis === "dispatch") return "made by the simple rule, for the plan searched for broke a rule";
  if (proven || gapPercent === 0) return "proven, no plan is better";
  return gapPercent === null ? "not proven best" : `at most ${gapPercent} % from the best plan`;
}

/** All rows share their columns, so that the eye runs down the days. */
function sayTimetable(sessions: readonly PlannedSession[], speech: Speech, columns: number | null): string[] {
  const cells = sessions.flatMap(({ rows }) =>
    rows.map((row) => {
      const { from, who, what, minutes, setUp, station, look, finishes } = sayPlannedRow(row, speech);
      const work = finishes === "" ? what : `${what}: ${finishes}`;
      const more = [station, setUp, look].filter((said) => said !== "").join(", ");
      return [from, who, work, minutes, more];
    }),
  );
  const lines = layOut(cells, columns);
  let next = 0;
  return sessions.flatMap((session) => {
    const first = next;
    next += session.rows.length;
    return [
      "",
      sayPlannedSession(session, speech),
      ...lines.slice(first, next),
      ...sayPutAway(session, speech).map((said) => `  ${said}`),
    ];
  });
}

import type { Project } from "../project.ts";
import { generateSchedule } from "./generate-schedule.ts";

/**
 * Shifts a schedule to the right and back to the left, each activity as far as it goes: often shorter, never longer
 * (double justification: Valls, Ballestín and Quintanilla, European Journal of Operational Research 165, 2005).
 *
 * @param starts of a schedule without maximal lags
 */
export function justify(project: Project, starts: readonly number[]): number[] {
  const latestEndFirst = project.activities.map(({ duration }, at) => -(starts[at] ?? 0) - duration);
  const backward = generateSchedule(turnAround(project), latestEndFirst, "serial");
  const earliestStartFirst = project.activities.map(({ duration }, at) => -(backward[at] ?? 0) - duration);
  return generateSchedule(project, earliestStartFirst, "serial");
}

/** The same project seen backward in time: an activity starts where it ended. */
function turnAround({ activities, lags, capacities }: Project): Project {
  const lasts = (activity: number) => activities[activity]?.duration ?? 0;
  return {
    activities,
    capacities,
    lags: lags.map(({ from, to, least }) => ({ from: to, to: from, least: least + lasts(to) - lasts(from) })),
  };
}

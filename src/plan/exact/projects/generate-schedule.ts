import type { Project, StartLag } from "../project.ts";

/**
 * How a schedule is generated. `serial`: whatever ranks first is put at its earliest time, though that be late.
 * `parallel`: whatever can start first is put there, and of those the one that ranks first: nothing waits that could
 * start. For machines alike that is Graham's list scheduling (SIAM Journal on Applied Mathematics 17, 1969).
 */
export type Scheme = "serial" | "parallel";

/**
 * Schedule generation (Kelley 1963; both schemes: Kolisch, European Journal of Operational Research 90, 1996): of the
 * activities whose predecessors stand, one after another is put at the earliest time at which it fits. For projects
 * without maximal lags, where this never ends in a corner.
 *
 * @param rank by activity, the least first
 * @returns starts by activity
 */
export function generateSchedule(project: Project, rank: readonly number[], scheme: Scheme): number[] {
  const { activities, lags, capacities } = project;
  const taken = capacities.map((): number[] => []);
  const starts = activities.map(() => 0);
  const leaving = activities.map((): StartLag[] => []);
  const missing = activities.map(() => 0);
  for (const lag of lags) {
    leaving[lag.from]?.push(lag);
    missing[lag.to] = (missing[lag.to] ?? 0) + 1;
  }
  const eligible = new Set([...activities.keys()].filter((activity) => missing[activity] === 0));
  const fits = (activity: number) => firstFit(taken, project, activity, starts[activity] ?? 0);
  while (eligible.size > 0) {
    const activity = pick(eligible, scheme === "serial" ? () => 0 : fits, rank);
    eligible.delete(activity);
    const start = fits(activity);
    starts[activity] = start;
    take(taken, project, activity, start);
    for (const { to, least } of leaving[activity] as StartLag[]) {
      starts[to] = Math.max(starts[to] ?? 0, start + least);
      missing[to] = (missing[to] ?? 0) - 1;
      if (missing[to] === 0) eligible.add(to);
    }
  }
  return starts;
}

/** The one of least time, then of least rank, then of least number. */
function pick(
  eligible: ReadonlySet<number>,
  timeOf: (activity: number) => number,
  rank: readonly number[],
): number {
  let first = -1;
  let firstTime = 0;
  for (const activity of eligible) {
    const time = timeOf(activity);
    const gain = firstTime - time || (rank[first] ?? 0) - (rank[activity] ?? 0) || first - activity;
    if (first >= 0 && gain <= 0) continue;
    first = activity;
    firstTime = time;
  }
  return first;
}

/** The first time from `earliest` on at which all that an activity demands is free for as long as it lasts. */
function firstFit(
  taken: readonly (readonly number[])[],
  { activities, capacities }: Project,
  activity: number,
  earliest: number,
): number {
  const { duration = 0, demands = [] } = activities[activity] ?? {};
  let start = earliest;
  for (let time = start; time < start + duration; time++) {
    const fits = demands.every(
      (demand, resource) =>
        demand === 0 || (taken[resource]?.[time] ?? 0) + demand <= (capacities[resource] ?? 0),
    );
    if (!fits) start = time + 1;
  }
  return start;
}

function take(taken: readonly number[][], { activities }: Project, activity: number, start: number): void {
  const { duration = 0, demands = [] } = activities[activity] ?? {};
  for (const [resource, demand] of demands.entries()) {
    const row = taken[resource] as number[];
    if (demand === 0) continue;
    for (let time = start; time < start + duration; time++) row[time] = (row[time] ?? 0) + demand;
  }
}

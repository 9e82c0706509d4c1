import type { Project, StartLag } from "./project.ts";

/**
 * Serial schedule generation (Kelley 1963; Kolisch, European Journal of Operational Research 90, 1996): of the
 * activities whose predecessors stand, the one that ranks first is put at its earliest time, and so on. For projects
 * without maximal lags, where this never ends in a corner.
 *
 * @param rank by activity, the least first
 * @returns starts by activity
 */
export function generateSchedule(project: Project, rank: readonly number[]): number[] {
  const { activities, lags, capacities } = project;
  const taken = capacities.map((): number[] => []);
  const starts = activities.map(() => 0);
  const leaving = activities.map((): StartLag[] => []);
  const missing = activities.map(() => 0);
  for (const lag of lags) {
    leaving[lag.from]?.push(lag);
    missing[lag.to] = (missing[lag.to] ?? 0) + 1;
  }
  const eligible = activities.flatMap((_, activity) => (missing[activity] === 0 ? [activity] : []));
  while (eligible.length > 0) {
    const place = placeOfFirst(eligible, rank);
    const [activity = 0] = eligible.splice(place, 1);
    const { duration = 0, demands = [] } = activities[activity] ?? {};
    const start = firstFit(taken, capacities, demands, starts[activity] ?? 0, duration);
    starts[activity] = start;
    for (const [resource, demand] of demands.entries()) {
      const row = taken[resource] as number[];
      if (demand === 0) continue;
      for (let time = start; time < start + duration; time++) row[time] = (row[time] ?? 0) + demand;
    }
    for (const { to, least } of leaving[activity] as StartLag[]) {
      starts[to] = Math.max(starts[to] ?? 0, start + least);
      missing[to] = (missing[to] ?? 0) - 1;
      if (missing[to] === 0) eligible.push(to);
    }
  }
  return starts;
}

function placeOfFirst(eligible: readonly number[], rank: readonly number[]): number {
  let first = 0;
  for (let place = 1; place < eligible.length; place++) {
    const one = eligible[place] as number;
    const best = eligible[first] as number;
    const gain = (rank[best] as number) - (rank[one] as number);
    if (gain > 0 || (gain === 0 && one < best)) first = place;
  }
  return first;
}

/** The first time from `earliest` on at which all it demands is free for as long as it lasts. */
function firstFit(
  taken: readonly (readonly number[])[],
  capacities: readonly number[],
  demands: readonly number[],
  earliest: number,
  duration: number,
): number {
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

import type { Project } from "../../../src/plan/exact/project.ts";

/** Whether the first `known` starts break nothing among themselves. */
function isSound({ activities, lags, capacities }: Project, starts: readonly number[]): boolean {
  const keepsLags = lags.every(({ from, to, least }) => {
    const one = starts[from];
    const other = starts[to];
    return one === undefined || other === undefined || other >= one + least;
  });
  // What is taken only grows when something starts, so those moments are enough.
  return (
    keepsLags &&
    starts.every((moment) =>
      capacities.every((capacity, resource) => {
        const taken = starts.map((start, at) => {
          const { duration = 0, demands = [] } = activities[at] ?? {};
          return start <= moment && moment < start + duration ? (demands[resource] ?? 0) : 0;
        });
        return taken.reduce((sum, demand) => sum + demand, 0) <= capacity;
      }),
    )
  );
}

/**
 * The shortest makespan by trying every start of every activity up to `horizon`; null: no schedule. Slow, and plainly
 * right.
 */
export function enumerateMakespan(project: Project, horizon: number): number | null {
  const { activities } = project;
  let best: number | null = null;
  const starts: number[] = [];
  const place = (end: number): void => {
    const next = activities[starts.length];
    if (next === undefined) {
      best = end;
      return;
    }
    for (let start = 0; start + next.duration <= horizon; start++) {
      const after = Math.max(end, start + next.duration);
      if (best !== null && after >= best) return;
      starts.push(start);
      if (isSound(project, starts)) place(after);
      starts.pop();
    }
  };
  place(0);
  return best;
}

/** What is wrong with a schedule, said shortly. */
export function isSchedule(project: Project, starts: readonly number[], makespan: number): boolean {
  const ends = project.activities.map(({ duration }, at) => (starts[at] ?? Number.NaN) + duration);
  return (
    starts.length === ends.length &&
    starts.every((start) => start >= 0) &&
    Math.max(0, ...ends) === makespan &&
    isSound(project, starts)
  );
}

/** The shortest makespan of a job shop by playing every order in which its operations can be begun. */
export function enumerateJobShop(
  jobs: readonly (readonly { machine: number; duration: number }[])[],
): number {
  let best = Number.POSITIVE_INFINITY;
  const begin = (
    done: readonly number[],
    jobFree: readonly number[],
    machineFree: readonly number[],
  ): void => {
    const end = Math.max(...jobFree);
    if (end >= best) return;
    let isWhole = true;
    for (const [job, visits] of jobs.entries()) {
      const visit = visits[done[job] ?? 0];
      if (visit === undefined) continue;
      isWhole = false;
      const free = Math.max(jobFree[job] ?? 0, machineFree[visit.machine] ?? 0) + visit.duration;
      begin(
        done.with(job, (done[job] ?? 0) + 1),
        jobFree.with(job, free),
        machineFree.with(visit.machine, free),
      );
    }
    if (isWhole) best = end;
  };
  const none = jobs.map(() => 0);
  const machines = jobs.flatMap((visits) => visits.map(({ machine }) => machine));
  begin(none, none, new Array<number>(Math.max(...machines) + 1).fill(0));
  return best;
}

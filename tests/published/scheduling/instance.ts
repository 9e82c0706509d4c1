import type { Project, StartLag } from "../../../src/plan/exact/project.ts";

/** Instances as they stand in the .json files here; each file says its layout and its source. */
export interface ShopInstance {
  readonly name: string;
  readonly optimum: number;
  readonly jobs: readonly string[];
}

export interface ProjectInstance {
  readonly name: string;
  /** Null: there is no schedule. */
  readonly optimum: number | null;
  readonly capacities: string;
  readonly activities: readonly string[];
}

/** @param waiting false: an operation starts the moment the one before it ends */
export function readJobs({ jobs }: ShopInstance, waiting: boolean): Project {
  const visits = jobs.flatMap((job) =>
    job.split(" ").map((visit, place) => {
      const [machine = 0, duration = 0] = visit.split(":").map(Number);
      return { machine, duration, isFirst: place === 0 };
    }),
  );
  const machines = Math.max(...visits.map(({ machine }) => machine)) + 1;
  const none = new Array<number>(machines).fill(0);
  const lags = visits.flatMap(({ isFirst }, to): StartLag[] => {
    if (isFirst) return [];
    const least = visits[to - 1]?.duration ?? 0;
    const wait = { from: to - 1, to, least };
    return waiting ? [wait] : [wait, { from: to, to: to - 1, least: -least }];
  });
  return {
    activities: visits.map(({ machine, duration }) => ({ duration, demands: none.with(machine, 1) })),
    lags,
    capacities: none.map(() => 1),
  };
}

/** Activities whose third part names successors, or successors with waits after a colon. */
export function readActivities({ activities, capacities }: ProjectInstance): Project {
  const rows = activities
    .join("; ")
    .split("; ")
    .map((row) => row.split("/").map((part) => part.trim()));
  const durations = rows.map(([duration]) => Number(duration));
  const last = rows.length - 1;
  const lags = rows.flatMap(([, , arcs = ""], from): StartLag[] =>
    arcs
      .split(" ")
      .filter(Boolean)
      .map((arc) => {
        const [to = 0, least = durations[from] ?? 0] = arc.split(":").map(Number);
        return { from, to, least };
      }),
  );
  const ends = durations.map((least, from) => ({ from, to: last, least }));
  return {
    activities: rows.map(([, demands = ""], at) => ({
      duration: durations[at] ?? 0,
      demands: demands.split(" ").map(Number),
    })),
    lags: [...lags, ...ends],
    capacities: capacities.split(" ").map(Number),
  };
}

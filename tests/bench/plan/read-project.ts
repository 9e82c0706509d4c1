import type { Project, StartLag } from "../../../src/plan/exact/project.ts";
import { FileTrouble } from "./family.ts";

/**
 * Reads a `.sm` file of PSPLIB: a project with limited resources.
 *
 * @throws FileTrouble when a part is missing
 */
export function readPsplib(text: string): Project {
  const lines = text.split("\n");
  const activities = rowsAfter(lines, "REQUESTS/DURATIONS", 3).map(([, , duration, ...demands]) => ({
    duration: duration ?? 0,
    demands,
  }));
  const lags = rowsAfter(lines, "PRECEDENCE RELATIONS", 2).flatMap(([from, , , ...successors]): StartLag[] =>
    successors.map((to) => ({
      from: (from ?? 0) - 1,
      to: to - 1,
      least: activities[(from ?? 0) - 1]?.duration ?? 0,
    })),
  );
  const [capacities] = rowsAfter(lines, "RESOURCEAVAILABILITIES", 2);
  return checked({ activities, lags, capacities: capacities ?? [] });
}

/** The rows of numbers that stand so many lines below a heading, down to the first line that is none. */
function rowsAfter(lines: readonly string[], heading: string, below: number): number[][] {
  const at = lines.findIndex((line) => line.startsWith(heading));
  if (at < 0) throw new FileTrouble(`has no part "${heading}".`);
  const rows = lines.slice(at + below);
  const end = rows.findIndex((line) => !/^[\d\s]+$/.test(line));
  return rows.slice(0, end < 0 ? rows.length : end).map(numbersIn);
}

/**
 * Reads a `.sch` file of ProGen/max: a project with least and greatest waits, all from start to start. The last
 * activity ends every other one.
 *
 * @throws FileTrouble when lines are missing
 */
export function readProgenMax(text: string): Project {
  const rows = text.trim().split("\n").map(numbersIn);
  const count = (rows[0]?.[0] ?? Number.NaN) + 2;
  if (rows.length !== 2 * count + 2)
    throw new FileTrouble(`has ${rows.length} lines where ${2 * count + 2} belong.`);
  const activities = rows.slice(count + 1, -1).map(([, , duration, ...demands]) => ({
    duration: duration ?? 0,
    demands,
  }));
  const lags = rows.slice(1, count + 1).flatMap(([from, , arcs, ...rest]): StartLag[] => {
    const targets = rest.slice(0, arcs);
    return targets.map((to, index) => ({
      from: from ?? 0,
      to,
      least: rest[(arcs ?? 0) + index] ?? Number.NaN,
    }));
  });
  const ends = activities.map(({ duration }, from) => ({ from, to: count - 1, least: duration }));
  return checked({ activities, lags: [...lags, ...ends], capacities: rows.at(-1) ?? [] });
}

/**
 * Reads a shop file: a line for each job, of pairs of machine and duration in the order of its visits.
 *
 * @param waiting false: every operation starts the moment the one before it ends
 * @throws FileTrouble when lines are missing
 */
export function readShop(text: string, waiting: boolean): Project {
  const [head, ...jobs] = text.trim().split("\n").map(numbersIn);
  const [count = Number.NaN, machines = Number.NaN] = head ?? [];
  if (jobs.length !== count) throw new FileTrouble(`has ${jobs.length} jobs where ${count} belong.`);
  const none = new Array<number>(machines).fill(0);
  const activities: { duration: number; demands: number[] }[] = [];
  const lags: StartLag[] = [];
  for (const job of jobs) {
    for (let visit = 0; visit < machines; visit++) {
      const duration = job[2 * visit + 1] ?? Number.NaN;
      const own = activities.push({ duration, demands: none.with(job[2 * visit] ?? 0, 1) }) - 1;
      if (visit === 0) continue;
      const least = activities[own - 1]?.duration ?? 0;
      lags.push({ from: own - 1, to: own, least });
      if (!waiting) lags.push({ from: own, to: own - 1, least: -least });
    }
  }
  return checked({ activities, lags, capacities: none.map(() => 1) });
}

function numbersIn(line: string): number[] {
  return Array.from(line.matchAll(/-?\d+/g), ([number]) => Number(number));
}

/** @throws FileTrouble when a number is missing or an arc leads nowhere */
function checked(project: Project): Project {
  const { activities, lags, capacities } = project;
  const sound =
    activities.every(({ duration, demands }) => duration >= 0 && demands.length === capacities.length) &&
    lags.every(({ from, to, least }) => from in activities && to in activities && Number.isInteger(least));
  if (!sound || activities.length === 0)
    throw new FileTrouble("is cut short, or its counts do not fit its lines.");
  return project;
}

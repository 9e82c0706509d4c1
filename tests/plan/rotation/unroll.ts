import type { Plan, Visit } from "../../../src/plan/plan.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import type { ProblemCircle } from "../../../src/plan/rotation/circle-of-problem.ts";
import type { CircleAnswer } from "../../../src/plan/rotation/solve-circle.ts";

/**
 * A rotation played out: the pieces of one period begun again in each of so many, as a plan of the problem of all of
 * them. So the checker of plans, which knows nothing of circles, can judge it.
 *
 * @param problem of `periods` times the pieces of a period
 */
export function unroll(
  problem: Problem,
  { circle, work }: ProblemCircle,
  { starts, made }: CircleAnswer,
  periods: number,
): { readonly problem: Problem; readonly plan: Plan } {
  const { period } = circle;
  const inPeriod = problem.tasks.length / periods;
  const first = Math.floor(Math.min(...(starts ?? [])) / period);
  const visits: Visit[] = [];
  for (let copy = 0; copy < periods; copy++) {
    for (const [index, { task, part }] of work.entries()) {
      if (part === "look") continue;
      const { minutes = 0, setUp = null } = circle.tasks[index] ?? {};
      const start = (starts?.[index] ?? Number.NaN) + (copy - first) * period;
      const head = made[index] === true && setUp !== null ? (circle.setUps[setUp]?.minutes ?? 0) : 0;
      visits.push({ task: task + copy * inPeriod, part, setUp: head, start, end: start + minutes });
    }
  }
  visits.sort((one, other) => one.start - other.start);
  const turns = Math.ceil(Math.max(...visits.map(({ end }) => end)) / period);
  const sessions = Array.from({ length: turns }, (_, turn) =>
    circle.sessions.map(({ opens, closes }) => ({
      opens: opens + turn * period,
      closes: closes + turn * period,
    })),
  ).flat();
  const finish = problem.pieces.map(({ cure }, piece) => {
    const own = visits.filter(({ task }) => problem.tasks[task]?.piece === piece);
    return Math.max(...own.map(({ end }) => end)) + cure;
  });
  return {
    problem: { ...problem, sessions, horizon: turns * period },
    plan: { visits, unplaced: [], finish },
  };
}

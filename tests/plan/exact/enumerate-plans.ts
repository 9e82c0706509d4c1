import { checkPlan } from "../../../src/plan/check-plan.ts";
import type { Plan, Visit } from "../../../src/plan/plan.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { scorePlan } from "../../../src/plan/score.ts";

/** The cost of the cheapest plan that works every task, by trying every start with and without setting up. */
export function enumerateCost(problem: Problem): number | null {
  const { tasks, setUps, horizon } = problem;
  let best: number | null = null;
  const visits: Visit[] = [];
  const place = (): void => {
    const task = visits.length;
    const about = tasks[task];
    if (about === undefined) {
      const { total } = scorePlan(problem, planOf(problem, visits));
      best = Math.min(best ?? total, total);
      return;
    }
    const minutes = setUps[about.setUp ?? -1]?.minutes ?? 0;
    for (const setUp of minutes > 0 ? [0, minutes] : [0]) {
      for (let start = setUp; start + about.minutes <= horizon; start++) {
        visits.push({ task, part: "step", setUp, start, end: start + about.minutes });
        const isWhole = visits.length === tasks.length;
        const wrong = checkPlan(problem, planOf(problem, visits));
        // What is judged by other visits, too, is judged when all are there.
        if (isWhole ? wrong.length === 0 : wrong.every((text) => /does not stand|are out/.test(text)))
          place();
        visits.pop();
      }
    }
  };
  place();
  return best;
}

function planOf({ tasks, pieces }: Problem, visits: readonly Visit[]): Plan {
  const unplaced = tasks.flatMap((_, task) => (task < visits.length ? [] : [task]));
  const finish = pieces.map(({ cure }, piece) => {
    const ends = visits.flatMap(({ task, end }) => (tasks[task]?.piece === piece ? [end] : []));
    const isLeft = unplaced.some((task) => tasks[task]?.piece === piece);
    return isLeft || ends.length === 0 ? null : Math.max(...ends) + cure;
  });
  return { visits: visits.toSorted((a, b) => a.start - b.start), unplaced, finish };
}

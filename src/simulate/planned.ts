import { dispatch } from "../plan/dispatch.ts";
import type { Plan, Visit } from "../plan/plan.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Problem } from "../plan/problem.ts";
import { beginSearch } from "../plan/search/search.ts";
import type { Policy } from "./play-forward.ts";
import type { Moment } from "./problem-now.ts";

/** The first act of a plan made by dispatch, without search. */
export function atOnce(): Policy {
  return ({ problem }) => firstAct(dispatch(prepareDispatch(problem)), problem);
}

/**
 * dryline's own way: before each act the plan is searched for so many rounds, from where the plan before it left off,
 * and its first act is done. It remembers that plan, so each play needs a policy of its own.
 */
export function planned({ seed, rounds }: { seed: number; rounds: number }): Policy {
  let last: { readonly plan: Plan; readonly moment: Moment } | null = null;
  return (moment) => {
    const warm = last === null ? null : carryOver(last.plan, last.moment, moment);
    const search = beginSearch(moment.problem, { seed, warm });
    search.go(rounds);
    const { plan } = search.found;
    last = { plan, moment };
    return firstAct(plan, moment.problem);
  };
}

/** A plan of an earlier moment in the numbers and minutes of a later one; what was done since has no visit in it. */
function carryOver(plan: Plan, from: Moment, to: Moment): Plan {
  const later = to.now - from.now;
  const places = new Map(to.tasks.map((number, place) => [number, place]));
  const finishes = new Map(from.pieces.map((number, piece) => [number, plan.finish[piece] ?? null]));
  return {
    visits: plan.visits.flatMap((visit) => {
      const task = places.get(from.tasks[visit.task] ?? -1);
      if (task === undefined || visit.start < later) return [];
      return [{ ...visit, task, start: visit.start - later, end: visit.end - later }];
    }),
    unplaced: [],
    finish: to.pieces.map((number) => {
      const finish = finishes.get(number) ?? null;
      return finish === null ? null : finish - later;
    }),
  };
}

/** The visits of a plan that belong to the first act still to begin: preparations, and the work they are for. */
function firstAct({ visits }: Plan, { tasks }: Problem): readonly Visit[] | null {
  const first = visits.find(({ task }) => tasks[task]?.running === false);
  if (first === undefined) return null;
  const act: Visit[] = [];
  for (const visit of visits) {
    if (visit.task !== first.task) continue;
    act.push(visit);
    if (visit.part !== "preparation") break;
  }
  return act;
}

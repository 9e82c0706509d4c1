import { dispatch } from "../plan/dispatch.ts";
import type { Plan, Visit } from "../plan/plan.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Problem } from "../plan/problem.ts";
import { beginSearch } from "../plan/search/search.ts";
import { bestUnderLuck } from "../plan/search/under-luck.ts";
import { firstToBegin } from "./begin-now.ts";
import type { Policy } from "./play-forward.ts";
import type { Moment } from "./problem-now.ts";

/** The first act of a plan made by dispatch, without search. */
export function atOnce(): Policy {
  return ({ problem }) => firstAct(dispatch(prepareDispatch(problem)), problem);
}

export interface Planning {
  readonly seed: number;
  /** Of search before the first act of each bench session, and before every other. */
  readonly rounds: { readonly first: number; readonly other: number };
}

/**
 * dryline's own way: before each act the plan is searched, from where the plan before it left off, and the first act is
 * done of what does best under luck: that plan, or a simple order. While that has to wait, small work that hinders nothing
 * is done first. It remembers its plan, so each play needs a policy of its own.
 */
export function planned({ seed, rounds }: Planning): Policy {
  let last: { readonly plan: Plan; readonly moment: Moment } | null = null;
  let searchedUntil = Number.NEGATIVE_INFINITY;
  return (moment) => {
    const { problem } = moment;
    let warm = last === null ? null : carryOver(last.plan, last.moment, moment);
    const awaited = warm === null ? null : firstAct(warm, problem);
    const isFirst = moment.now >= searchedUntil;
    if (isFirst || awaited === null || !standsStill(awaited, problem)) {
      const search = beginSearch(problem, { seed, warm });
      search.go(isFirst ? rounds.first : rounds.other);
      warm = bestUnderLuck(problem, search.found.plan, seed);
      searchedUntil = moment.now + (problem.sessions[0]?.closes ?? 0);
    }
    const plan = warm ?? { visits: [], unplaced: [], finish: [] };
    last = { plan, moment };
    const act = firstAct(plan, problem);
    return act === null ? null : (meanwhile(act, plan, problem) ?? act);
  };
}

/** Whether an act that was waited for may be begun now, as it was planned. */
function standsStill(act: readonly Visit[], problem: Problem): boolean {
  const [first] = act;
  const last = act.at(-1);
  if (first === undefined || last === undefined || first.start - first.setUp !== 0) return false;
  const now = firstToBegin(problem, [first.task], Number.POSITIVE_INFINITY)?.at(-1);
  return now?.start === last.start && now.end === last.end;
}

/**
 * Work planned for later that can be done before the act at hand begins, on other pieces begun, and that sets nothing
 * up, gives nothing off and hangs nowhere: it can only help.
 */
function meanwhile(act: readonly Visit[], { visits }: Plan, problem: Problem): readonly Visit[] | null {
  const [first] = act;
  if (first === undefined || first.start - first.setUp <= 0) return null;
  const piece = problem.tasks[first.task]?.piece;
  const small = visits.filter(({ task: number }) => {
    const task = problem.tasks[number];
    if (task === undefined || task.piece === piece || task.running || task.ended !== null) return false;
    const plain = task.setUp === null && task.gives.length === 0 && task.hook === null;
    return plain && task.looks.length === 0 && problem.pieces[task.piece]?.begun === true;
  });
  const tasks = small.map(({ task }) => task);
  return firstToBegin(problem, tasks, first.start - first.setUp);
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

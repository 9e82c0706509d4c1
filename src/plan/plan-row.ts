import type { Seq, Tag } from "../journal/event.ts";
import type { PlannedStart, PlanRow } from "../journal/journal.ts";
import { after, MINUTE } from "../time/instant.ts";
import { at } from "./at.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan, Visit } from "./plan.ts";
import type { ShopFacts } from "./plan-shop.ts";

/** Of every search for a shop's plan, in every program: one shop, one plan. */
export const SEED = 1;

/** A plan must be better by this share of its cost to take the place of one kept that still holds: rows shall not flit about. */
export const WORTH_IT = 0.01;

/**
 * A plan in the words of the journal, so that it can seed the plan of any later moment. A mend of a coat that lies
 * there already is left out: it follows from its window.
 */
export function rowOf(plan: Plan, made: ShopProblem, about: Omit<PlanRow, "starts" | "leaving">): PlanRow {
  return { ...about, ...startsOf(plan, made), leaving: { until: 0, work: [] } };
}

/** What of a plan can be carried over to the problem of another moment, or of the shop changed. */
export function startsOf(plan: Plan, made: ShopProblem): Pick<PlanRow, "starts"> {
  const names = namesOfTasks(made);
  const starts = plan.visits.flatMap(({ task, part, start }): PlannedStart[] => {
    const name = names[task];
    return name === undefined ? [] : [{ ...name, part, start: after(made.problem.origin, start) }];
  });
  return { starts };
}

/**
 * A kept plan as the seed of a search over the problem of a later moment. Only its order and starts mean anything:
 * what was done since is left out, what came since has no visit, a start may lie before minute 0, and each end is
 * reckoned from the task's own minutes.
 */
export function warmPlan({ starts }: Pick<PlanRow, "starts">, made: ShopProblem): Plan {
  const { problem } = made;
  const tasks = tasksByName(made);
  const visits = starts.flatMap((planned): Visit[] => {
    const task = tasks.get(keyOf(planned));
    if (task === undefined) return [];
    const start = Math.floor((planned.start - problem.origin) / MINUTE);
    return [{ task, part: planned.part, setUp: 0, start, end: start + at(problem.tasks, task).minutes }];
  });
  return { visits, unplaced: [], finish: problem.pieces.map(() => null) };
}

/** A plan of one problem as the same of another that has its tasks, too; what it makes ready stays made. */
export function carriedOver({ visits }: Plan, made: ShopProblem, other: ShopProblem): Plan {
  const names = namesOfTasks(made);
  const tasks = tasksByName(other);
  const carried = visits.flatMap((visit): Visit[] => {
    const name = names[visit.task];
    const task = name === undefined ? undefined : tasks.get(keyOf(name));
    return task === undefined ? [] : [{ ...visit, task }];
  });
  return { visits: carried, unplaced: [], finish: other.problem.pieces.map(() => null) };
}

/** Whether a plan was made for the shop as it is, acts and settings alike; else it is no more than a seed. */
export function isCurrent(row: PlanRow, newest: Seq, settings: string): boolean {
  return row.seq === newest && row.settings === settings;
}

/**
 * What a plan depends on besides the acts, as one text to compare: bench hours, hands, the aim, hooks, what must be
 * kept apart, and the process of a new piece. Some of it changes with the day, or with a file, without any act.
 */
export function settingsOf({ context, hands, aim, places }: ShopFacts): string {
  const { hours, zone, rules, newPiece } = context;
  return JSON.stringify([
    hours,
    zone.name,
    hands,
    aim,
    [...places],
    rules.keepApart,
    newPiece === null ? null : newPiece.hash,
  ]);
}

type TaskName = Pick<PlannedStart, "tag" | "step" | "pass">;

/** By task: what it is called; undefined: a coat that lies there already. */
function namesOfTasks({ problem, pieces }: ShopProblem): (TaskName | undefined)[] {
  const names = new Array<TaskName | undefined>(problem.tasks.length).fill(undefined);
  for (const [piece, tag] of tagsOf(pieces).entries()) {
    for (const { task, step, pass, facts } of at(pieces, piece).tasks) {
      names[task] = { tag, step, pass: (facts?.nextPass ?? 1) + pass };
    }
  }
  return names;
}

/** By piece of a problem: its tag; negative for one not tagged yet, -1 the first of those. */
export function tagsOf(pieces: ShopProblem["pieces"]): Tag[] {
  let untagged = 0;
  return pieces.map(({ tag }) => tag ?? --untagged);
}

function tasksByName(made: ShopProblem): ReadonlyMap<string, number> {
  return new Map(
    namesOfTasks(made).flatMap((name, task) => (name === undefined ? [] : [[keyOf(name), task] as const])),
  );
}

function keyOf({ tag, step, pass }: TaskName): string {
  return `${tag}\n${pass}\n${step}`;
}

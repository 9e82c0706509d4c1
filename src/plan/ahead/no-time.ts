import { at } from "../at.ts";
import { firstFit } from "../fit-minutes.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { NoTime } from "../plan-answer.ts";
import type { Problem, Task } from "../problem.ts";
import type { PlannedShop } from "./planned-shop.ts";

const DAY = 24 * 60;

/** Why a piece is not finished in the days looked at: the first of its tasks that found no time says so. */
export function noTimeFor(shop: PlannedShop, number: number): NoTime {
  const { problem, pieces } = shop.made;
  const left = at(pieces, number).tasks.filter(({ task }) => shop.plan.unplaced.includes(task));
  for (const made of left) {
    const task = at(problem.tasks, made.task);
    if (task.release === null) return unknown(made);
    const long = tooLong(problem, task, made.step);
    if (long !== null) return long;
    if (!hasFitAir(problem, task)) return { because: "air", step: made.step, coat: made.coat };
  }
  return { because: "beyond", days: Math.round(problem.horizon / DAY) };
}

/** Nobody knows when it may begin: something is to be measured, or a touch must say. */
function unknown({ step, facts }: MadeTask): NoTime {
  if (facts === null || facts.needsMet) return { because: "touch first", step };
  return { because: "measure first", step, what: facts.step.needs.map(({ what }) => what) };
}

/** Whether some bench session has air fit for the task for as long as it takes; beyond the horizon none is known. */
export function hasFitAir(
  { sessions, horizon }: Pick<Problem, "sessions" | "horizon">,
  { minutes, unfit = [] }: Task,
): boolean {
  return sessions.some(
    ({ opens, closes }) => firstFit(unfit, minutes, opens) + minutes <= Math.min(closes, horizon),
  );
}

export type TooLong = Extract<NoTime, { because: "too long" }>;

/** A task that no bench session is long enough for, with its set-up and putting that away; null: one is. */
export function tooLong({ sessions, setUps }: Problem, task: Task, step: string): TooLong | null {
  if (task.mayStop || task.running || task.ended !== null) return null;
  const longest = Math.max(0, ...sessions.map(({ opens, closes }) => closes - Math.max(0, opens)));
  const setUp = task.setUp === null ? { minutes: 0, putAway: 0 } : at(setUps, task.setUp);
  const minutes = setUp.minutes + task.minutes + setUp.putAway;
  return minutes > longest ? { because: "too long", step, minutes, longest } : null;
}

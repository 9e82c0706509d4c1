import type { Visit } from "../../plan.ts";
import { type Problem, SHORTEST_PART, type Task } from "../../problem.ts";
import type { Model } from "../conflict/model.ts";
import { ModelDraft } from "../conflict/model-draft.ts";
import { addGoal } from "./shop-goal.ts";
import { addOrders } from "./shop-orders.ts";
import { handsRules, hookRules, outRules, setUpRules } from "./shop-rules.ts";
import { addSessions, addTasks, addUnfit, type TaskTimes } from "./shop-tasks.ts";
import { addWaits } from "./shop-waits.ts";

/** A shop as the search by conflict reads it. */
export interface ShopModel extends Model {
  readonly tasks: readonly TaskTimes[];
  /** A plan that leaves a piece unfinished costs at least this. */
  readonly unfinished: number;
}

/**
 * The bench's problem as a model: sessions, one pair of hands, set-ups, what must keep apart, hooks that stay taken,
 * windows, and the limit on how many are out. Windows that ask for preparation are left unused, nothing is mended, and
 * no work is split.
 *
 * @param kept visits of a plan that stay as they are, by task
 * @param most only plans that cost at most this are of interest
 * @returns null where there is no such plan, or the problem is of another kind
 */
export function makeShopModel(
  problem: Problem,
  kept: ReadonlyMap<number, Visit>,
  most: number,
): ShopModel | null {
  if (problem.hands !== 1 || !problem.tasks.every(isKnown)) return null;
  const draft = new ModelDraft();
  const tasks = addTasks(draft, problem, kept);
  const paths = addWaits(draft, problem, tasks);
  if (paths === null) return null;
  for (const task of tasks) {
    addSessions(draft, problem, task);
    addUnfit(draft, task);
  }
  if (draft.isEmpty) return null;
  const before = addOrders(draft, problem, tasks, paths);
  const goal = addGoal(draft, problem, tasks, most);
  const rules = [
    goal.rule,
    ...setUpRules(problem, tasks, before),
    ...handsRules(tasks),
    ...hookRules(problem, tasks),
    ...outRules(draft, problem, tasks, paths, goal.finishes),
  ];
  return { ...draft.finish(tasks.length, goal.variable, rules), tasks, unfinished: goal.unfinished };
}

function isKnown({ release, ended }: Task): boolean {
  return ended !== null || release !== null;
}

/**
 * Whether the model leaves out nothing that could make a plan cheaper: then no plan costs less than its best.
 */
export function saysAll({ tasks, looks, stations, setUps }: Problem): boolean {
  return (
    looks.length === 0 &&
    stations.every(({ standing }) => standing === null || standing === "any") &&
    setUps.every(({ putAway }) => putAway === 0) &&
    tasks.every(
      ({ mayStop, minutes, waits, looks: own }) =>
        own.length === 0 &&
        (!mayStop || minutes < 2 * SHORTEST_PART) &&
        waits.every(
          ({ windows, mend }) =>
            windows.length === 1 &&
            (mend === null || windows[0]?.shuts === null) &&
            windows[0]?.preparation === null,
        ),
    )
  );
}

import { dispatch } from "../plan/dispatch.ts";
import type { Visit } from "../plan/plan.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Policy } from "./play-forward.ts";

/** The first act of a plan made by dispatch, without search. */
export function atOnce(): Policy {
  return ({ problem }) => firstAct(dispatch(prepareDispatch(problem)).visits);
}

/** The visits of a plan that belong to its first act: preparations and the work they are for. */
export function firstAct(visits: readonly Visit[]): readonly Visit[] | null {
  const [first] = visits;
  if (first === undefined) return null;
  const act: Visit[] = [];
  for (const visit of visits) {
    if (visit.task !== first.task) continue;
    act.push(visit);
    if (visit.part !== "preparation") return act;
  }
  return act;
}

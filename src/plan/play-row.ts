import type { PlanRow } from "../journal/journal.ts";
import { checkPlan } from "./check-plan.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import { carriedOver, warmPlan } from "./plan-row.ts";
import { playAfter, playOn } from "./search/play-on.ts";

/**
 * What a plan kept has become by the present moment: its order played on from here. Whatever tells of it tells this.
 *
 * @returns null where it can be gone on with in no way that the checker lets pass
 */
export function playRow(row: Pick<PlanRow, "starts">, made: ShopProblem): Plan | null {
  const plan = playOn(made.problem, warmPlan(row, made));
  return plan === null || checkPlan(made.problem, plan).length > 0 ? null : plan;
}

/**
 * The same where more days are looked at than the row is kept for: what it has become stays as it is told of those, and
 * what else is to be done comes after it.
 *
 * @param week the problem that the row is of
 * @param made the same with the pieces and the hours of more days
 */
export function playRowOn(row: Pick<PlanRow, "starts">, week: ShopProblem, made: ShopProblem): Plan | null {
  const known = playRow(row, week);
  return known === null ? null : carryOn(known, week, made);
}

/**
 * A plan of one problem in another that has its tasks, too: as it stands, as far as that can be, and after it what else
 * is to be done. Null: there is no such plan that may be shown.
 */
export function carryOn(known: Plan, made: ShopProblem, other: ShopProblem): Plan | null {
  const plan = playAfter(other.problem, carriedOver(known, made, other));
  return plan === null || checkPlan(other.problem, plan).length > 0 ? null : plan;
}

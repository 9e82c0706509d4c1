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
  const plan = known === null ? null : playAfter(made.problem, carriedOver(known, week, made));
  return plan === null || checkPlan(made.problem, plan).length > 0 ? null : plan;
}

import type { PlanRow } from "../journal/journal.ts";
import { checkPlan } from "./check-plan.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import { warmPlan } from "./plan-row.ts";
import { playOn } from "./search/play-on.ts";

/**
 * What a plan kept has become by the present moment: its order played on from here. Whatever tells of it tells this.
 *
 * @returns null where it can be gone on with in no way that the checker lets pass
 */
export function playRow(row: Pick<PlanRow, "starts">, made: ShopProblem): Plan | null {
  const plan = playOn(made.problem, warmPlan(row, made));
  return plan === null || checkPlan(made.problem, plan).length > 0 ? null : plan;
}

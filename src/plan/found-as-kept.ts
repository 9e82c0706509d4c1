import type { Seq } from "../journal/event.ts";
import type { PlanRow } from "../journal/journal.ts";
import { makeProblem } from "./make-problem.ts";
import { aimNeedsOne } from "./need-new-piece.ts";
import { isCurrent, settingsOf, warmPlan } from "./plan-row.ts";
import type { ShopFacts } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";
import type { Found } from "./work-rows.ts";

/**
 * A kept plan as it was kept, not played on to the present moment: playing on takes longer than all else that a first
 * picture needs. It gives the order of the rows, each of them as fit to start as in any answer; starts may lie in the
 * past, and no finish is known.
 *
 * @returns null when the row is older than the newest act or than today's settings
 */
export function foundAsKept(row: PlanRow, newest: Seq, facts: ShopFacts): Found | null {
  if (!isCurrent(row, newest, settingsOf(facts))) return null;
  const wantsNew = aimNeedsOne(facts);
  const made = makeProblem(facts, wantsNew);
  const prepared = prepareDispatch(made.problem);
  return { facts, made, prepared, plan: warmPlan(row, made), basis: "plan", wantsNew };
}

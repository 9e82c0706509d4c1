import type { PlanRow } from "../journal/journal.ts";
import { keyOfRow, leftWork } from "./left-work.ts";
import { nowRows } from "./now-rows.ts";
import { leftRow, PlansWithout } from "./without-by-plan.ts";
import { leavingUntil } from "./without-by-row.ts";
import type { Found } from "./work-rows.ts";

/** How long a plan without each row is searched for, in rounds. */
const ROUNDS = 30;

/**
 * A plan to be kept, with what leaving each row of work for now does to it.
 *
 * @param found what the plan has become by now
 */
export function withLeaving(row: PlanRow, found: Found): PlanRow {
  const { facts, made, plan } = found;
  const plans = new PlansWithout(made.problem, plan, row.seed);
  const work = nowRows(found).work.map((candidates) => {
    const without = plans.begin(leftWork(candidates, facts, made));
    without.go(ROUNDS);
    return leftRow(made, keyOfRow(candidates), without.found);
  });
  return { ...row, leaving: { until: leavingUntil(facts), work } };
}

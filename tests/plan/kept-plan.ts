import type { PlanRow } from "../../src/journal/journal.ts";
import { leftWork } from "../../src/plan/left-work.ts";
import { planOfRow } from "../../src/plan/now-by-row.ts";
import { nowRows } from "../../src/plan/now-rows.ts";
import { rowOf, settingsOf } from "../../src/plan/plan-row.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { problemToPlan } from "../../src/plan/problem-to-plan.ts";
import { beginSearch } from "../../src/plan/search/search.ts";
import type { PlanContext } from "../../src/plan/what-now.ts";
import { leftRow, PlansWithout } from "../../src/plan/without-by-plan.ts";
import { leavingUntil } from "../../src/plan/without-by-row.ts";
import type { Shop } from "../../src/shop/shop.ts";

/** A plan of so many rounds with what leaving each row does to it, as a journal would keep it. */
export function keepPlan(shop: Shop, context: PlanContext, rounds = 100): PlanRow {
  const facts = readShop(shop, context);
  const made = problemToPlan(facts);
  const search = beginSearch(made.problem, { seed: 1, warm: null });
  search.go(rounds);
  const about = { seq: shop.newest, settings: settingsOf(facts), air: 0, seed: 1, rounds };
  const row = rowOf(search.found.plan, made, about);
  const found = planOfRow(row, shop.newest, facts);
  if (found === null) throw new Error("the checker objects to a plan found");
  const plans = new PlansWithout(made.problem, found.plan, 1);
  const work = nowRows(found).work.map((one) => {
    const left = leftWork(one, facts, made);
    return leftRow(made, left.key, plans.begin(left).found);
  });
  return { ...row, leaving: { until: leavingUntil(facts), work } };
}

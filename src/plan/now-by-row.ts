import type { Seq } from "../journal/event.ts";
import type { PlanRow } from "../journal/journal.ts";
import { notFoundYet } from "./cost-of-leaving.ts";
import type { NowAnswer } from "./now-answer.ts";
import { nowRows } from "./now-rows.ts";
import { isCurrent, settingsOf } from "./plan-row.ts";
import { readShop, type ShopFacts } from "./plan-shop.ts";
import { playRow } from "./play-row.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";
import { problemToPlan } from "./problem-to-plan.ts";
import { answerNow, nowByDispatch, type PlanContext } from "./what-now.ts";
import { withoutByRow } from "./without-by-row.ts";
import type { Found } from "./work-rows.ts";

/**
 * What now by the plan kept, with what leaving each row costs; by dispatch where the row no longer holds.
 *
 * @example nowByRow(shop, context, row).basis // "plan"
 */
export function nowByRow(
  shop: Parameters<typeof readShop>[0],
  context: PlanContext,
  row: PlanRow,
): NowAnswer {
  const facts = readShop(shop, context);
  const found = planOfRow(row, shop.newest, facts);
  if (found !== null) return answerByPlan(found, row);
  const is = row.seq === shop.newest ? "unfit" : "older";
  return { ...nowByDispatch(facts), plan: { is, gap: null } };
}

/**
 * The plan that a kept row stands for at the present moment: its order played on from here. The same facts and row
 * give the same plan, in a command and in the dashboard.
 *
 * @param newest the newest event of the journal
 * @returns null when the row is older than that or than today's settings, or the checker objects to what came of it
 */
export function planOfRow(row: PlanRow, newest: Seq, facts: ShopFacts): Found | null {
  if (!isCurrent(row, newest, settingsOf(facts))) return null;
  const made = problemToPlan(facts);
  const plan = playRow(row, made);
  if (plan === null) return null;
  // The problem carries the number the aim asks for: it need not be reckoned again.
  const wantsNew = facts.pieces.length < (made.problem.mostOut ?? 0) && facts.context.newPiece !== null;
  return { facts, made, prepared: prepareDispatch(made.problem), plan, basis: "plan", wantsNew };
}

/**
 * Tells a plan with nobody at hand who would search on. What leaving a row costs is told as it was kept with the plan, or
 * not at all: by dispatch it would be told against another finish than the plan's.
 */
export function answerByPlan(found: Found, row: PlanRow): NowAnswer {
  return answerNow(found, nowRows(found), (work) => withoutByRow(work, found, row.leaving) ?? notFoundYet);
}

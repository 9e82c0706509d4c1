import type { Minutes } from "../../time/instant.ts";
import { aimPieces } from "../aim-pieces.ts";
import { checkPlan } from "../check-plan.ts";
import { dispatch } from "../dispatch.ts";
import { type AddedPiece, makeProblem, type ShopProblem } from "../make-problem.ts";
import type { Plan } from "../plan.ts";
import type { PlanQuality } from "../plan-answer.ts";
import type { ShopFacts } from "../plan-shop.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import { type Score, scorePlan } from "../score.ts";
import type { Found } from "../search/search.ts";
import { type PlannedShop, plannedShop } from "./planned-shop.ts";

/**
 * Searches for the plan of a problem for as long as it sees fit.
 *
 * @param near the plan of a near problem, to start from; null: none is known
 */
export type SearchFor = (made: ShopProblem, near: Plan | null) => Found;

/** Cost above the bound, in per cent, beyond which a gap says nothing. */
const TELLING_GAP = 15;

/** A plan that was searched for and looked through by the checker. */
export interface SearchedShop extends PlannedShop {
  readonly score: Score;
  readonly quality: PlanQuality;
  readonly rounds: number;
}

/**
 * Searches for the plan of a shop with the pieces its aim asks for. Pieces added come before those, and count among
 * them. What does not pass the checker is not shown: the plan of dispatch then stands.
 *
 * @param shown minutes for which the aim's pieces are planned
 */
export function searchShop(
  usual: ShopFacts,
  added: readonly AddedPiece[],
  shown: Minutes,
  search: (made: ShopProblem) => Found,
): SearchedShop {
  const aimed = aimPieces(usual, shown);
  const { facts } = aimed;
  const made = makeProblem(facts, false, [...added, ...aimed.added.slice(added.length)]);
  const { problem } = made;
  const found = search(made);
  if (checkPlan(problem, found.plan).length === 0) {
    const { plan, score, bound, proven } = found;
    const quality = {
      basis: "plan",
      proven,
      gapPercent: gapPercent(score.total, bound),
      broken: [],
    } as const;
    return { ...plannedShop(facts, made, plan), score, quality, rounds: found.rounds };
  }
  const plan = dispatch(prepareDispatch(problem));
  const quality = {
    basis: "dispatch",
    proven: false,
    gapPercent: null,
    broken: checkPlan(problem, plan),
  } as const;
  return { ...plannedShop(facts, made, plan), score: scorePlan(problem, plan), quality, rounds: 0 };
}

/** By how much a cost may lie above the least there is, in whole per cent, rounded up; null: too much to say anything. */
function gapPercent(total: number, bound: number): number | null {
  if (total <= bound) return 0;
  const percent = bound <= 0 ? Number.POSITIVE_INFINITY : Math.ceil((100 * (total - bound)) / bound);
  return percent <= TELLING_GAP ? percent : null;
}

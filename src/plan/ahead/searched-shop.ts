import type { PlanRow } from "../../journal/journal.ts";
import type { Minutes } from "../../time/instant.ts";
import { aimPieces } from "../aim-pieces.ts";
import { checkPlan } from "../check-plan.ts";
import { dispatch } from "../dispatch.ts";
import { type AddedPiece, makeProblem, type ShopProblem } from "../make-problem.ts";
import type { Plan } from "../plan.ts";
import type { PlanQuality } from "../plan-answer.ts";
import { startsOf } from "../plan-row.ts";
import type { ShopFacts } from "../plan-shop.ts";
import { playRow } from "../play-row.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import { type Score, scorePlan } from "../score.ts";
import type { Found, Search } from "../search/search.ts";
import { type PlannedShop, plannedShop } from "./planned-shop.ts";

/** How plans are searched for. */
export interface Searching {
  /** Begins a search with the plan of a near problem (null: none is known), or with what else is known. */
  readonly begin: (made: ShopProblem, near: Plan | null) => Search;
  /** Searches on for as long as it sees fit. */
  readonly goOn: (search: Search) => void;
  /** The plan kept, where it knows every act: it stands until a better one is found. */
  readonly kept: PlanRow | null;
}

/** Cost above the bound, in per cent, beyond which a gap says nothing. */
const TELLING_GAP = 15;

/** A plan that was searched for and looked through by the checker. */
export interface SearchedShop extends PlannedShop {
  readonly score: Score;
  readonly quality: PlanQuality;
  readonly rounds: number;
}

/**
 * The problem of a shop with the pieces its aim asks for. Pieces added come before those, and count among them.
 *
 * @param shown minutes for which the aim's pieces are planned
 */
export function problemAhead(usual: ShopFacts, added: readonly AddedPiece[], shown: Minutes): ProblemAhead {
  const { facts, added: aimed } = aimPieces(usual, shown);
  return { facts, made: makeProblem(facts, false, [...added, ...aimed.slice(added.length)]) };
}

/** What a plan is searched for, with the facts it was made of. */
export interface ProblemAhead {
  readonly facts: ShopFacts;
  readonly made: ShopProblem;
}

/** Looks a plan through. What does not pass the checker is not shown: the plan of dispatch then stands. */
export function checkedShop({ facts, made }: ProblemAhead, found: Found): SearchedShop {
  const { problem } = made;
  const { plan, score, bound, proven, rounds } = found;
  if (checkPlan(problem, plan).length === 0) {
    const gap = gapPercent(score.total, bound);
    const quality = { basis: "plan", proven, gapPercent: gap, broken: [] } as const;
    return { ...plannedShop(facts, made, plan), score, quality, rounds };
  }
  const simple = dispatch(prepareDispatch(problem));
  const broken = checkPlan(problem, simple);
  const quality = { basis: "dispatch", proven: false, gapPercent: null, broken } as const;
  return {
    ...plannedShop(facts, made, simple),
    score: scorePlan(problem, simple),
    quality,
    rounds: 0,
  };
}

/**
 * A plan found as it is told wherever its order is kept: played from the present moment. Where that cannot be, as it was
 * found.
 */
export function asKept(ahead: ProblemAhead, found: Found): SearchedShop {
  const plan = playRow(startsOf(found.plan, ahead.made), ahead.made);
  return plan === null ? checkedShop(ahead, found) : playedShop(ahead, plan, found);
}

/**
 * A plan of the same problem as one found, with the bound that came of the search. One that only finds time beyond the
 * days of which hours and air are known is told no sooner than one found that costs less.
 */
export function playedShop(ahead: ProblemAhead, plan: Plan, found: Found): SearchedShop {
  const { problem } = ahead.made;
  const score = scorePlan(problem, plan);
  const isBeyond = plan.visits.some(({ end }) => end > problem.horizon);
  if (isBeyond && score.total > found.score.total) return checkedShop(ahead, found);
  const { bound, rounds } = found;
  return checkedShop(ahead, { plan, score, bound, proven: score.total <= bound, rounds });
}

/** By how much a cost may lie above the least there is, in whole per cent, rounded up; null: too much to say anything. */
function gapPercent(total: number, bound: number): number | null {
  if (total <= bound) return 0;
  const percent = bound <= 0 ? Number.POSITIVE_INFINITY : Math.ceil((100 * (total - bound)) / bound);
  return percent <= TELLING_GAP ? percent : null;
}

import type { Minutes } from "../time/instant.ts";
import { aimPieces } from "./aim-pieces.ts";
import { makeProblem, type ShopProblem } from "./make-problem.ts";
import type { ShopFacts } from "./plan-shop.ts";

/** So far ahead new pieces are planned for the aim: a week. */
const AIM_AHEAD: Minutes = 7 * 24 * 60;

/** The problem a plan is searched for: the pieces out, and those the aim will have begun in the coming week. */
export function problemToPlan(facts: ShopFacts): ShopProblem {
  const aimed = aimPieces(facts, AIM_AHEAD);
  return makeProblem(aimed.facts, false, aimed.added);
}

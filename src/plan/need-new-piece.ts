import type { Minutes } from "../time/instant.ts";
import { dispatch } from "./dispatch.ts";
import { makeProblem } from "./make-problem.ts";
import type { ShopFacts } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";

const WEEK: Minutes = 7 * 24 * 60;

/** Whether the maker's aim needs another piece begun: fewer are on their way than it asks for. */
export function aimNeedsOne(facts: ShopFacts): boolean {
  const wanted = facts.context.newPiece === null ? null : outWanted(facts);
  return wanted !== null && facts.pieces.length < wanted;
}

/**
 * How many pieces the maker's aim asks to have on their way: as many as the aim for how many are out, and no more than
 * an aim for a week needs by Little's law (J. D. C. Little, A proof for the queuing formula L = λW, Operations Research
 * 9, 1961): the rate times the days one piece alone takes in these bench hours. Null: no aim.
 */
export function outWanted(facts: ShopFacts): number | null {
  const { aim } = facts;
  if (aim === null) return null;
  const { out, finishedPerWeek } = aim;
  if (finishedPerWeek === null) return out;
  return Math.min(out ?? Infinity, Math.ceil((finishedPerWeek * soloMinutes(facts)) / WEEK));
}

/** From begun to finished with nothing else in the shop; the horizon, where that is longer. */
function soloMinutes(facts: ShopFacts): Minutes {
  const alone = makeProblem({ ...facts, pieces: [], endedHooks: [], aim: null }, true);
  return dispatch(prepareDispatch(alone.problem)).finish[0] ?? facts.horizon;
}

/**
 * Whether a new piece may be offered though no aim asks for one: the hands have nothing else to do, and fewer pieces
 * are on their way than the fullest place a new one will hang at has hooks.
 */
export function roomForOne({ aim, context, pieces, places }: ShopFacts): boolean {
  if (aim !== null || context.newPiece === null) return false;
  const hooks = context.newPiece.definition.steps.flatMap(({ place }) => {
    const count = place === null ? undefined : places.get(place)?.hooks;
    return count === undefined ? [] : [count];
  });
  return pieces.length < Math.min(...hooks, Number.POSITIVE_INFINITY);
}

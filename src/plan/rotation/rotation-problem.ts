import type { ProcessDefinition } from "../../process/definition.ts";
import { makeProblem, type ShopProblem } from "../make-problem.ts";
import type { ShopFacts } from "../plan-shop.ts";

/**
 * So many pieces of one process as a planning problem, in a shop where nothing is out, hangs or stands ready: what comes
 * round again and again.
 */
export function rotationProblem(
  facts: ShopFacts,
  definition: ProcessDefinition,
  pieces: number,
): ShopProblem {
  const empty = { ...facts, pieces: [], endedHooks: [], standing: [], air: [] };
  const piece = { definition, due: null, release: 0, underLimit: false };
  return makeProblem(
    empty,
    false,
    Array.from({ length: pieces }, () => piece),
  );
}

import type { Problem } from "../problem.ts";
import { beginProof } from "./prove-shop.ts";
import { relaxPiece } from "./shops/relax-piece.ts";

/** Decisions spent on a piece alone; most need fewer. */
const MOST_NODES = 400;

/**
 * What no plan costs less than: each piece planned as well as can be, as though it had the bench to itself. The hours
 * in which the bench is shut and the windows of a piece count in full, what other pieces take of the hands does not.
 */
export function boundByPieces(problem: Problem): number {
  return problem.pieces.reduce((sum, { release, due, weight }, piece) => {
    const { prices, horizon } = problem;
    // A piece that is not finished counts as finished at the horizon.
    const unfinished =
      prices.flow * Math.max(0, horizon - release) +
      (due === null ? 0 : prices.late * weight * Math.max(0, horizon - due));
    const proof = beginProof(relaxPiece(problem, piece), new Map(), unfinished);
    proof?.go((nodes) => nodes >= MOST_NODES);
    return sum + Math.min(unfinished, proof?.bound ?? 0);
  }, 0);
}

import type { Minutes } from "../../time/instant.ts";
import type { Circle } from "./circle.ts";
import { PatternSearch } from "./pattern/find-pattern.ts";
import { leastSpansOf } from "./pattern/least-spans.ts";
import { answerOf } from "./pattern/solve-pattern.ts";
import { type CircleAnswer, solveCircle } from "./solve-circle.ts";

/** In shorter periods a piece is in its own way, and the proof is short. */
const SHORT: Minutes = 2 * 1_440;
/** Rounds of pattern search for a rotation to begin with. */
const ROUNDS = 12;

/**
 * The rotation of one piece. In longer periods a pattern is found first, and then only what takes less is searched for,
 * exactly. In a week with closed days that saves most of the proof, for what branching alone finds first may take months.
 */
export function solveAlone(circle: Circle, stop: (nodes: number) => boolean): CircleAnswer {
  if (circle.period <= SHORT) return solveCircle(circle, { stop });
  const search = new PatternSearch(circle);
  const ask = { pieces: 1, out: Number.POSITIVE_INFINITY, begun: [], seed: 1, shorten: 0 };
  const placed = search.search({ ...ask, rounds: ROUNDS, isOver: () => stop(0) });
  if (placed.length === 0) return solveCircle(circle, { stop });
  const begun = answerOf(placed, 0);
  const shorter = solveCircle(circle, begun.span === null ? { stop } : { stop, below: begun.span });
  if (shorter.status === "optimal") return shorter;
  const { span } = begun;
  // Nothing shorter exists: what was begun with is the least.
  if (shorter.status === "infeasible" && span !== null)
    return { ...begun, status: "optimal", bound: span, nodes: shorter.nodes };
  const best = shorter.starts === null ? begun : shorter;
  return { ...best, status: "feasible", bound: Math.max(shorter.bound, leastSpansOf(search.route, 1)) };
}

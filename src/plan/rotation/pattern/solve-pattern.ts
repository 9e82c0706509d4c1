import type { Minutes } from "../../../time/instant.ts";
import type { CircleAnswer } from "../solve-circle.ts";
import { type PatternSearch, spansOf } from "./find-pattern.ts";
import { mostOut, type Placed } from "./placed.ts";

/** Above so many open minutes in a period a round takes longer, and there are fewer of them. */
const MANY_MINUTES = 1_500;

export interface PatternsAsk {
  readonly search: PatternSearch;
  readonly pieces: number;
  /** No pattern takes less together, nor has fewer out. */
  readonly bound: Minutes;
  readonly fewest: number;
  /** A pattern to begin from, of as many pieces or fewer. */
  readonly begun: readonly Placed[];
  /** Rounds of search: to get all pieces in, for each number out that is tried, and to shorten what they take. */
  readonly rounds: { readonly first: number; readonly fewer: number; readonly shorten: number };
  readonly isOver: () => boolean;
}

/**
 * A pattern of several alike pieces a period, with few out: as many are allowed as the one before had, one more for a
 * piece more, then one fewer each time as long as that is found. Within each number what the pieces take is shortened.
 *
 * @returns null: not so many were got in
 */
export function solvePattern(asked: PatternsAsk): readonly Placed[] | null {
  const { search, pieces, bound, fewest, begun, isOver } = asked;
  const rounds = fewerRounds(asked);
  const { period } = search.route.circle;
  const ask = { pieces, seed: pieces, shorten: null, isOver };
  const allowed = Math.max(fewest, mostOut(begun, period) + (begun.length < pieces ? 1 : 0));
  let best = search.search({ ...ask, rounds: rounds.first, out: allowed, begun });
  if (best.length < pieces) return null;
  for (let out = mostOut(best, period) - 1; out >= fewest; out = mostOut(best, period) - 1) {
    const tried = search.search({ ...ask, rounds: rounds.fewer, out, begun: best });
    if (mostOut(tried, period) > out) break;
    best = tried;
  }
  const shorter = search.search({
    ...ask,
    rounds: rounds.shorten,
    out: mostOut(best, period),
    begun: best,
    shorten: bound,
  });
  if (mostOut(shorter, period) <= mostOut(best, period)) best = shorter;
  return inOrder(best);
}

function fewerRounds({ search, rounds: { first, fewer, shorten } }: PatternsAsk): PatternsAsk["rounds"] {
  const share = Math.min(1, MANY_MINUTES / search.route.time.size);
  return {
    first: Math.ceil(first * share),
    fewer: Math.ceil(fewer * share),
    shorten: Math.ceil(shorten * share),
  };
}

/** A pattern as the answer to the circle of all its pieces; null: none was found. */
export function answerOf(placed: readonly Placed[] | null, bound: Minutes): CircleAnswer {
  if (placed === null) return { status: "unknown", starts: null, made: [], span: null, bound, nodes: 0 };
  const span = spansOf(placed);
  return {
    status: span === bound ? "optimal" : "feasible",
    starts: placed.flatMap(({ starts }) => starts),
    made: placed.flatMap(({ made }) => made),
    span,
    bound,
    nodes: 0,
  };
}

/** The pieces by when they are begun in the period. */
function inOrder(placed: readonly Placed[]): readonly Placed[] {
  return [...placed].sort((one, other) => one.from - other.from);
}

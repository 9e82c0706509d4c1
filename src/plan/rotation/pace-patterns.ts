import type { Minutes } from "../../time/instant.ts";
import type { Circle } from "./circle.ts";
import { PatternSearch, spansOf } from "./pattern/find-pattern.ts";
import { leastOutOf, quickestSuccession, type Succession } from "./pattern/least-out.ts";
import { leastSpansOf } from "./pattern/least-spans.ts";
import { mostOut, type Placed, placedIn } from "./pattern/placed.ts";
import { answerOf, type PatternsAsk, solvePattern } from "./pattern/solve-pattern.ts";
import type { CircleAnswer } from "./solve-circle.ts";

/** The patterns known of one process in one length of period, each the beginning of the next. */
export class PacePatterns {
  readonly #search: PatternSearch;
  /** By how many pieces less one. */
  readonly #known: (readonly Placed[])[];
  readonly #bounds = new Map<number, Minutes>();
  #succession: Succession | null = null;

  /** @param one the rotation of one piece, solved */
  constructor(circle: Circle, answer: CircleAnswer) {
    this.#search = new PatternSearch(circle);
    this.#known = answer.starts === null ? [] : [placedIn(circle, answer)];
  }

  /** The best found of so many pieces; each call with more rounds betters it. */
  solve(pieces: number, rounds: PatternsAsk["rounds"], isOver: () => boolean): CircleAnswer {
    const begun = this.#known[pieces - 1] ?? this.#known.at(-1) ?? [];
    const bound = this.boundOf(pieces);
    const ask = {
      search: this.#search,
      pieces,
      begun,
      rounds,
      isOver,
      bound,
      fewest: this.fewestOut(pieces),
    };
    const placed = solvePattern(ask);
    if (placed !== null) this.#keep(placed);
    return answerOf(this.#known[pieces - 1] ?? null, bound);
  }

  /**
   * No pattern of so many pieces takes less together. So many times what one takes alone is no such bound: a set-up that
   * stands from another piece may save it a day.
   */
  boundOf(pieces: number): Minutes {
    const known = this.#bounds.get(pieces);
    const bound = known ?? leastSpansOf(this.#search.route, pieces);
    this.#bounds.set(pieces, bound);
    return bound;
  }

  /** No pattern of so many pieces has fewer out at the most. */
  fewestOut(pieces: number): number {
    const { route } = this.#search;
    const { period } = route.circle;
    this.#succession ??= quickestSuccession(route);
    const bySpans = Math.ceil(this.boundOf(pieces) / period);
    return this.#succession === null
      ? bySpans
      : Math.max(bySpans, leastOutOf(this.#succession, pieces, period));
  }

  /** Takes up a pattern that was found elsewhere. */
  offer(placed: readonly Placed[]): void {
    this.#keep(placed);
  }

  /** Keeps a pattern, and what is left of it without one piece where that has fewer out than what was known. */
  #keep(placed: readonly Placed[]): void {
    const known = this.#known[placed.length - 1];
    if (placed.length === 0 || (known !== undefined && !this.#isBetter(placed, known))) return;
    this.#known[placed.length - 1] = placed;
    for (const piece of placed) {
      const left = this.#search.without(placed, piece);
      if (left.length === placed.length - 1) this.#keep(left);
    }
  }

  /** Fewer out, or as many that take less together. */
  #isBetter(one: readonly Placed[], other: readonly Placed[]): boolean {
    const { period } = this.#search.route.circle;
    const fewer = mostOut(other, period) - mostOut(one, period);
    return fewer > 0 || (fewer === 0 && spansOf(one) < spansOf(other));
  }
}

/** Rounds for what one change gives: the pattern that is known holds with it. */
const ROUNDS_OF_CHANGE = { first: 0, fewer: 10, shorten: 10 };

/** A pattern in a changed circle of one piece, begun from an answer that was known before the change. */
export function betterPattern(
  circle: Circle,
  pieces: number,
  known: CircleAnswer,
  isOver: () => boolean,
): CircleAnswer {
  const begun = placedIn(circle, known);
  const search = new PatternSearch(circle);
  const placed = solvePattern({
    search,
    pieces,
    bound: 0,
    fewest: 1,
    begun,
    rounds: ROUNDS_OF_CHANGE,
    isOver,
  });
  return answerOf(placed, 0);
}

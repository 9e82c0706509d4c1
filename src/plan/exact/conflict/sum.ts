import { type Bounds, WHY } from "./bounds.ts";
import type { Rule } from "./model.ts";

/** So many times a variable. */
export interface Term {
  readonly variable: number;
  /** More than 0. */
  readonly times: number;
}

/** A goal that is at least `base` and a weighted sum: it rises with any of its terms, and its upper bound holds each. */
export class Sum implements Rule {
  readonly variables: readonly number[];
  readonly #goal: number;
  readonly #base: number;
  readonly #terms: readonly Term[];

  constructor(goal: number, base: number, terms: readonly Term[]) {
    this.variables = [goal, ...terms.map(({ variable }) => variable)];
    this.#goal = goal;
    this.#base = base;
    this.#terms = terms;
  }

  /**
   * The goal is at least what the terms are at least; and each term has no more room than the goal's upper bound
   * leaves when all others are at their least.
   */
  propagate(bounds: Bounds): boolean {
    let least = this.#base;
    for (const { variable, times } of this.#terms) least += times * (bounds.now[2 * variable] as number);
    if (least > (bounds.now[2 * this.#goal] as number)) {
      const place = this.#noteTerms(bounds, -1);
      if (!bounds.raise(2 * this.#goal, least, WHY.NOTED, place)) return false;
    }
    const room = -(bounds.now[2 * this.#goal + 1] as number) - least;
    for (const [index, { variable, times }] of this.#terms.entries()) {
      const most = (bounds.now[2 * variable] as number) + Math.floor(room / times);
      if (-most <= (bounds.now[2 * variable + 1] as number)) continue;
      const place = this.#noteTerms(bounds, index);
      bounds.note(place, 2 * this.#goal + 1, bounds.now[2 * this.#goal + 1] as number);
      if (!bounds.raise(2 * variable + 1, -most, WHY.NOTED, place)) return false;
    }
    return true;
  }

  /** Notes the least of all terms but one. */
  #noteTerms(bounds: Bounds, except: number): number {
    const place = bounds.beginNote();
    for (const [index, { variable }] of this.#terms.entries()) {
      if (index !== except) bounds.note(place, 2 * variable, bounds.now[2 * variable] as number);
    }
    return place;
  }
}

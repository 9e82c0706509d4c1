import { Bounds } from "./bounds.ts";
import { Clauses } from "./clauses.ts";
import { Learner } from "./learn.ts";
import type { Model } from "./model.ts";

/**
 * Draws conclusions until there are no more: first the cheap ones, bound by bound (arcs, learned clauses), then each
 * rule whose variables have moved.
 */
export class Engine {
  readonly bounds: Bounds;
  readonly learner: Learner;
  readonly clauses: Clauses;
  readonly #model: Model;
  /** By side: which rules look at it. */
  readonly #watchers: readonly (readonly number[])[];
  readonly #stale: boolean[];
  /** How much of the history has been looked at. */
  #done = 0;

  constructor(model: Model) {
    this.#model = model;
    this.bounds = new Bounds(model.first);
    this.clauses = new Clauses(model.first.length);
    this.learner = new Learner(this.bounds, model.arcs, this.clauses);
    for (const literals of model.clauses) this.clauses.addForGood(literals);
    const watchers = model.first.map((): number[] => []);
    for (const [rule, { variables }] of model.rules.entries()) {
      for (const variable of new Set(variables)) {
        watchers[2 * variable]?.push(rule);
        watchers[2 * variable + 1]?.push(rule);
      }
    }
    this.#watchers = watchers;
    this.#stale = model.rules.map(() => true);
  }

  /** @returns false on a clash, which is then in the bounds */
  propagate(): boolean {
    for (;;) {
      if (!this.#followBounds()) return this.#giveUp();
      // One rule at a time: what it finds is followed by the cheap means before the next.
      const rule = this.#stale.indexOf(true);
      if (rule < 0) return true;
      this.#stale[rule] = false;
      if (!this.#model.rules[rule]?.propagate(this.bounds)) return this.#giveUp();
    }
  }

  goBack(level: number): void {
    this.bounds.goBack(level);
    this.#done = Math.min(this.#done, this.bounds.size);
  }

  #followBounds(): boolean {
    const { bounds } = this;
    while (this.#done < bounds.size) {
      const entry = this.#done++;
      const side = bounds.side[entry] as number;
      // A newer entry of the same side says more.
      if (bounds.newest[side] !== entry) continue;
      for (const rule of this.#watchers[side] as readonly number[]) this.#stale[rule] = true;
      if (!this.#model.arcs.propagate(bounds, side) || !this.clauses.propagate(bounds, side)) return false;
    }
    return true;
  }

  /** After a clash the search goes back to where all had been concluded. */
  #giveUp(): false {
    this.#done = this.bounds.size;
    this.#stale.fill(false);
    return false;
  }
}

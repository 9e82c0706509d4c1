import { Bounds } from "./bounds.ts";
import { Clauses } from "./clauses.ts";
import { Learner } from "./learn.ts";
import { Machine } from "./machine.ts";
import type { Model } from "./model.ts";
import { Profile } from "./profile.ts";

/** A rule about a resource that draws all its conclusions from scratch. */
interface Rule {
  propagate(bounds: Bounds): boolean;
}

/**
 * Draws conclusions until there are no more: first the cheap ones, bound by bound (arcs, learned clauses), then each
 * rule about resources whose activities have moved.
 */
export class Engine {
  readonly bounds: Bounds;
  readonly learner: Learner;
  readonly clauses: Clauses;
  readonly #model: Model;
  readonly #rules: readonly Rule[];
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
    this.#rules = [
      ...model.machines.map((view) => new Machine(view)),
      ...model.shared.map((view) => new Profile(view)),
    ];
    const watchers = model.first.map((): number[] => []);
    for (const [rule, view] of [...model.machines, ...model.shared].entries()) {
      for (const body of new Set(Array.from(view.side, (side) => side >> 1))) {
        watchers[2 * body]?.push(rule);
        watchers[2 * body + 1]?.push(rule);
      }
    }
    this.#watchers = watchers;
    this.#stale = this.#rules.map(() => true);
  }

  /** @returns false on a clash, which is then in the bounds */
  propagate(): boolean {
    for (;;) {
      if (!this.#followBounds()) return this.#giveUp();
      const rule = this.#stale.indexOf(true);
      if (rule < 0) return true;
      this.#stale[rule] = false;
      if (!this.#rules[rule]?.propagate(this.bounds)) return this.#giveUp();
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

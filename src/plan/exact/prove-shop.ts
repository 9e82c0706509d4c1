import type { Plan, Visit } from "../plan.ts";
import type { Problem } from "../problem.ts";
import { SearchByConflict } from "./conflict/search-by-conflict.ts";
import { makeShopModel, type ShopModel, saysAll } from "./shops/shop-model.ts";

/** A proof in the making that a plan is the best there is; better plans are found on the way. */
export interface ShopProof {
  /**
   * Searches on.
   *
   * @param isOver asked before each decision with their count; true: stop
   * @returns whether a better plan was found
   */
  go(isOver: (nodes: number) => boolean): boolean;
  /** Says what the best plan known elsewhere costs by now: only cheaper ones are looked for. */
  know(cost: number): void;
  /** The best plan found that costs less than what was known when it was found; null: none yet. */
  readonly plan: Plan | null;
  /** No plan costs less. */
  readonly bound: number;
  /** There is nothing more to find: the plan here, or else the one known, is the best of its kind. */
  readonly isOver: boolean;
}

/** Clashes of a first run. */
const PATIENCE = 200;

/**
 * Begins to look for plans that cost less than one known, and to prove that there is none. For small problems: it
 * weighs every two tasks that could come in either order.
 *
 * @param kept visits of a plan that stay as they are, by task: the rest is then planned as well as can be around them
 * @param known what the best plan known costs
 * @returns null where the problem is of a kind the model does not know
 */
export function beginProof(
  problem: Problem,
  kept: ReadonlyMap<number, Visit>,
  known: number,
): ShopProof | null {
  const model = makeShopModel(problem, kept, known - 1);
  return model === null ? null : new Proof(problem, model, known, kept.size === 0 && saysAll(problem));
}

class Proof implements ShopProof {
  readonly #problem: Problem;
  readonly #model: ShopModel;
  readonly #search: SearchByConflict;
  /** Whether the model leaves out no plan. */
  readonly #isWhole: boolean;
  #patience = PATIENCE;
  /** The next question is about the bound: is there a plan as cheap as a part of the gap above it? */
  #low = false;
  #part = 1 / 8;
  /** What the best plan known elsewhere costs. */
  #known: number;
  isOver: boolean;

  constructor(problem: Problem, model: ShopModel, known: number, isWhole: boolean) {
    this.#problem = problem;
    this.#known = known;
    this.#model = model;
    this.#search = new SearchByConflict(model);
    this.#isWhole = isWhole;
    this.isOver = !this.#search.begin(0);
  }

  go(isOver: (nodes: number) => boolean): boolean {
    const before = this.#search.best;
    const { nodes } = this.#search;
    let stopped = false;
    while (!this.isOver && !stopped) stopped = this.#ask((now) => isOver(now - nodes));
    return this.#search.best !== before;
  }

  /** Asks one question. @returns whether the caller stopped it */
  #ask(isOver: (nodes: number) => boolean): boolean {
    const { bound, most } = this.#search;
    const cost = this.#low ? bound + Math.floor((most - bound) * this.#part) : most;
    const end = this.#search.run(cost, this.#patience, isOver);
    if (end === "exhausted") this.isOver = true;
    if (end === "refuted") this.#part = Math.min(1 / 2, this.#part * 2);
    if (end === "tired" && this.#low) this.#part /= 2;
    if (end === "tired" && !this.#low) this.#patience *= 1.3;
    // A better plan may be far from the best: the next question asks for more than a little better.
    if (end === "tired") this.#low = !this.#low;
    else if (end === "found") this.#low = true;
    return end === "stopped";
  }

  know(cost: number): void {
    if (this.isOver || cost > this.#search.most) return;
    this.#known = cost;
    if (!this.#search.demand(cost - 1)) this.isOver = true;
  }

  get bound(): number {
    if (!this.#isWhole) return 0;
    const { best, bound } = this.#search;
    const found = best === null ? Number.POSITIVE_INFINITY : (best[this.#model.goal] as number);
    return Math.min(this.#model.unfinished, this.isOver ? Math.min(found, this.#known) : bound);
  }

  get plan(): Plan | null {
    const { best } = this.#search;
    if (best === null) return null;
    const visits = this.#model.tasks
      .map(({ task, about, begin, start }): Visit => {
        const from = best[start] as number;
        return {
          task,
          part: "step",
          setUp: from - (best[begin] as number),
          start: from,
          end: from + about.minutes,
        };
      })
      .sort((a, b) => a.start - b.start);
    const finish = this.#problem.pieces.map(({ cure }, piece) => {
      const ends = visits.flatMap(({ task, end }) =>
        this.#problem.tasks[task]?.piece === piece ? [end] : [],
      );
      return ends.length === 0 ? null : Math.max(...ends) + cure;
    });
    return { visits, unplaced: [], finish };
  }
}

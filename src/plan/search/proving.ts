import { beginProof, type ShopProof } from "../exact/prove-shop.ts";
import type { Plan } from "../plan.ts";
import type { Problem } from "../problem.ts";

/** More tasks than this are beyond proof. */
export const MOST_PROVEN = 75;

/** Rounds before the proof begins: a good plan first makes it shorter. */
const FIRST = 60;

/** Proving has a turn after so many other rounds. */
const EVERY = 120;

/** Decisions of its first turn; each begins again with what was learned, so later ones are longer by a part. */
const DECISIONS = 1000;
const LONGER = 1.2;

/** Decisions of a turn at most: nobody can stop it meanwhile. About a tenth of a second. */
const MOST_DECISIONS = 4000;

/** Exact search beside the search by orders, where the problem is small enough. */
export class Proving {
  readonly #problem: Problem;
  readonly #tasks: number;
  #decisions = DECISIONS;
  #proof: ShopProof | null | undefined;

  /** @param tasks how many are to do */
  constructor(problem: Problem, tasks: number) {
    this.#problem = problem;
    this.#tasks = tasks;
  }

  isTurn(round: number): boolean {
    const might = this.#proof === undefined ? this.#tasks <= MOST_PROVEN : this.#proof?.isOver === false;
    return might && round % EVERY === FIRST;
  }

  /** One round. @returns whether a plan was found that may be better than the one known */
  go(known: number): boolean {
    this.#proof ??= beginProof(this.#problem, new Map(), known);
    this.#proof?.know(known);
    const most = this.#decisions;
    this.#decisions = Math.min(MOST_DECISIONS, this.#decisions * LONGER);
    return this.#proof?.go((nodes) => nodes >= most) ?? false;
  }

  get plan(): Plan | null {
    return this.#proof?.plan ?? null;
  }

  /** No plan costs less; 0: nothing is known. */
  get bound(): number {
    return this.#proof?.bound ?? 0;
  }
}

import type { Minutes } from "../../time/instant.ts";
import { chanceFrom } from "../chance.ts";
import { dispatch } from "../dispatch.ts";
import type { Plan } from "../plan.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import type { Problem } from "../problem.ts";
import { type Score, scorePlan } from "../score.ts";
import { Anneal } from "./anneal.ts";
import { beginBench } from "./begin-bench.ts";
import { makeBench } from "./make-bench.ts";
import { decisionsOf, orderOf } from "./order-of.ts";
import { planOf } from "./plan-of.ts";
import { Player, type Solution } from "./play-order.ts";
import { measureTails } from "./tails.ts";

/** The best plan known so far. */
export interface Found {
  readonly plan: Plan;
  readonly score: Score;
  /** No plan costs less. */
  readonly bound: number;
  /** The plan costs as little as any can. */
  readonly proven: boolean;
  /** How many rounds have been searched. */
  readonly rounds: number;
}

/** A search that can be stopped after any round, and gone on with. */
export interface Search {
  /** Runs so many rounds more; true: something better was found. */
  go(rounds: number): boolean;
  readonly found: Found;
}

/**
 * Begins to search for the best plan. The same problem, seed, warm plan and rounds give the same answer.
 *
 * What is found at once is the dispatch plan, or the warm plan's order played if that is better.
 *
 * @param options.warm a plan of an earlier moment or a near problem, whose order is a seed
 * @example
 * const search = beginSearch(problem, { seed: 1, warm: null });
 * search.go(1000); // → true: better than dispatch
 */
export function beginSearch(
  problem: Problem,
  options: { readonly seed: number; readonly warm: Plan | null },
): Search {
  return new OpenSearch(problem, options.seed, options.warm);
}

class OpenSearch implements Search {
  readonly #problem: Problem;
  readonly #player: Player;
  readonly #anneal: Anneal | null;
  #bound: number;
  #plan: Plan;
  #score: Score;
  /** The solution that the plan shows; null: the dispatch plan itself. */
  #shown: Solution | null = null;
  #rounds = 0;

  constructor(problem: Problem, seed: number, warm: Plan | null) {
    this.#problem = problem;
    this.#plan = dispatch(prepareDispatch(problem));
    this.#score = scorePlan(problem, this.#plan);
    const bench = makeBench(problem);
    measureTails(bench);
    beginBench(bench);
    this.#bound = bench.cost;
    this.#player = new Player(bench);
    const seeds = warm === null ? [this.#plan] : [this.#plan, warm];
    for (const plan of seeds) this.#seed(plan);
    this.#anneal = this.#player.order.length > 1 ? new Anneal(this.#player, chanceFrom(seed)) : null;
  }

  /** Lets the order of a plan stand if it is the better one: as it comes, or with what the plan shares and sets up. */
  #seed(plan: Plan): void {
    const player = this.#player;
    const order = orderOf(player.bench, plan);
    for (const decided of [new Int32Array(2 * order.length), decisionsOf(order, plan)]) {
      const before = player.solution();
      player.adopt({ order, decided, cost: 0 });
      if (before.order.length > 0 && before.cost <= player.cost) player.adopt(before);
    }
  }

  go(rounds: number): boolean {
    const anneal = this.#anneal;
    this.#rounds += rounds;
    if (anneal === null) return false;
    const before = Math.min(this.#score.total, anneal.best.cost);
    for (let round = 0; round < rounds; round++) {
      if (Math.min(this.#score.total, anneal.best.cost) <= this.#bound) break;
      anneal.round();
    }
    return anneal.best.cost < before;
  }

  /** Takes over a solution as a plan, if it is better than the plan shown. */
  #show(): void {
    const best = this.#anneal?.best ?? null;
    if (best === null || best === this.#shown || best.cost >= this.#score.total) return;
    const player = this.#player;
    const now = player.solution();
    player.adopt(best);
    this.#plan = planOf(player.bench);
    this.#score = scorePlan(this.#problem, this.#plan);
    this.#shown = best;
    player.adopt(now);
  }

  get found(): Found {
    this.#show();
    const { total } = this.#score;
    return {
      plan: this.#plan,
      score: this.#score,
      bound: this.#bound,
      proven: total <= this.#bound,
      rounds: this.#rounds,
    };
  }
}

/** The same problem with these tasks not begun before a minute: what leaving them until then means. */
export function leaveUntil(problem: Problem, tasks: readonly number[], minute: Minutes): Problem {
  const left = new Set(tasks);
  return {
    ...problem,
    tasks: problem.tasks.map((task, index) =>
      left.has(index) && task.release !== null && !task.running
        ? { ...task, release: Math.max(task.release, minute) }
        : task,
    ),
  };
}

import type { Minutes } from "../../time/instant.ts";
import { chanceFrom } from "../chance.ts";
import { checkPlan } from "../check-plan.ts";
import { dispatch } from "../dispatch.ts";
import { boundByPieces } from "../exact/bound-by-pieces.ts";
import type { Plan } from "../plan.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import type { Problem } from "../problem.ts";
import { type Score, scorePlan } from "../score.ts";
import { Anneal } from "./anneal.ts";
import { lowerBound } from "./bound.ts";
import { openBench } from "./open-bench.ts";
import { decisionsOf, orderOf } from "./order-of.ts";
import { planOf } from "./plan-of.ts";
import { Player } from "./play-order.ts";
import { MOST_PROVEN, Proving } from "./proving.ts";
import { asPlanned, simpleRanks } from "./simple-orders.ts";
import type { Solution } from "./solution.ts";

/** The best plan known so far. */
export interface Found {
  readonly plan: Plan;
  readonly score: Score;
  /** No plan costs less. Asked for the first time it takes a moment: it is made then. */
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
  readonly #proving: Proving;
  #bound: number;
  /** The bound that takes longer, once somebody asked. */
  #tighter: number | null = null;
  #plan: Plan;
  #score: Score;
  /** The solution that was last made a plan of. */
  #shown: Solution | null = null;
  #rounds = 0;

  constructor(problem: Problem, seed: number, warm: Plan | null) {
    this.#problem = problem;
    this.#plan = dispatch(prepareDispatch(problem));
    this.#score = scorePlan(problem, this.#plan);
    const bench = openBench(problem);
    this.#bound = lowerBound(bench);
    this.#player = new Player(bench);
    this.#seed(this.#plan, false);
    const dispatched = this.#player.cost;
    if (warm !== null) this.#takeWarm(warm, bench.tasks.length);
    // The rules were tried when the warm plan was found.
    const withRules = warm === null || this.#player.cost > dispatched;
    const { length } = this.#player.order;
    const ranks = [...(warm === null ? [] : [asPlanned(warm)]), ...(withRules ? simpleRanks : [])];
    this.#anneal = length > 1 ? new Anneal(this.#player, chanceFrom(seed), ranks, withRules) : null;
    this.#proving = new Proving(problem, length);
  }

  /** Seeds with a warm plan; a small one is shown as it is where it still holds and its order played is dearer. */
  #takeWarm(warm: Plan, tasks: number): void {
    this.#seed(warm, true);
    if (tasks > MOST_PROVEN) return;
    const score = scorePlan(this.#problem, warm);
    if (score.total >= Math.min(this.#player.cost, this.#score.total)) return;
    if (checkPlan(this.#problem, warm).length > 0) return;
    this.#plan = warm;
    this.#score = score;
  }

  /** Lets the order of a plan stand if it is the better one: as it comes, or with what the plan shares and sets up. */
  #seed(plan: Plan, withSetUps: boolean): void {
    const player = this.#player;
    const order = orderOf(player.bench, plan);
    const plain = new Int32Array(2 * order.length);
    for (const decided of withSetUps ? [plain, decisionsOf(order, plan)] : [plain]) {
      const before = player.solution();
      player.adopt({ order, decided, cost: 0 });
      if (before.order.length > 0 && before.cost <= player.cost) player.adopt(before);
    }
  }

  go(rounds: number): boolean {
    const anneal = this.#anneal;
    const before = this.#cheapest();
    for (let round = 0; round < rounds && anneal !== null && this.#cheapest() > this.#bound; round++) {
      if (!this.#proving.isTurn(this.#rounds + round)) anneal.round();
      else if (this.#proving.go(this.#cheapest())) this.#takeProven(anneal);
      this.#bound = Math.max(this.#bound, Math.min(this.#proving.bound, this.#cheapest()));
    }
    this.#rounds += rounds;
    return this.#cheapest() < before;
  }

  #cheapest(): number {
    return Math.min(this.#score.total, this.#anneal?.best.cost ?? Number.POSITIVE_INFINITY);
  }

  /** A plan found by proving is shown if it holds and is better, and its order searched on from. */
  #takeProven(anneal: Anneal): void {
    const { plan } = this.#proving;
    if (plan === null || checkPlan(this.#problem, plan).length > 0) return;
    const score = scorePlan(this.#problem, plan);
    if (score.total >= this.#cheapest()) return;
    this.#seed(plan, true);
    anneal.takeOver();
    // Its order played is as good as a rule, and makes no set-up that is not needed.
    if (anneal.best.cost <= score.total) return;
    this.#plan = plan;
    this.#score = score;
  }

  /** Takes over the best order as a plan, if it is better than the plan shown. */
  #show(): void {
    const best = this.#anneal?.best ?? null;
    if (best === null || best === this.#shown || best.cost >= this.#score.total) return;
    const player = this.#player;
    const now = player.solution();
    player.playWhole(best);
    this.#plan = planOf(player.bench);
    this.#score = scorePlan(this.#problem, this.#plan);
    this.#shown = best;
    player.adopt(now);
  }

  get found(): Found {
    this.#show();
    const tighten = (): number => {
      this.#tighter ??= Math.min(this.#score.total, boundByPieces(this.#problem));
      this.#bound = Math.max(this.#bound, this.#tighter);
      return this.#bound;
    };
    return {
      plan: this.#plan,
      score: this.#score,
      get bound() {
        return tighten();
      },
      proven: this.#score.total <= this.#bound,
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

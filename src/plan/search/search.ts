import { at } from "../at.ts";
import type { Leave } from "../bench-run.ts";
import { chanceFrom } from "../chance.ts";
import { checkPlan } from "../check-plan.ts";
import { dispatch } from "../dispatch.ts";
import { boundByPieces } from "../exact/bound-by-pieces.ts";
import { listOf } from "../list-of.ts";
import type { Plan } from "../plan.ts";
import { type Prepared, prepareDispatch } from "../prepare-dispatch.ts";
import type { Problem } from "../problem.ts";
import { type Score, scorePlan } from "../score.ts";
import { firstAlike, spareLeft } from "./alike-pieces.ts";
import { Anneal } from "./anneal.ts";
import { beginBench } from "./begin-bench.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { lowerBound } from "./bound.ts";
import { copyBench } from "./copy-bench.ts";
import { makeBench } from "./make-bench.ts";
import { openBench } from "./open-bench.ts";
import { decisionsOf, orderOf } from "./order-of.ts";
import { planOf } from "./plan-of.ts";
import { Player } from "./play-order.ts";
import { MOST_PROVEN, Proving } from "./proving.ts";
import { asPlanned, simpleRanks } from "./simple-orders.ts";
import type { Solution } from "./solution.ts";
import { measureTails } from "./tails.ts";

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

interface Options {
  readonly seed: number;
  /** A plan of an earlier moment or a near problem, whose order is a seed. */
  readonly warm: Plan | null;
}

/**
 * Begins to search for the best plan. The same problem, seed, warm plan and rounds give the same answer.
 *
 * What is found at once is the dispatch plan, or the warm plan's order played if that is better.
 *
 * @example
 * const search = beginSearch(problem, { seed: 1, warm: null });
 * search.go(1000); // → true: better than dispatch
 */
export function beginSearch(problem: Problem, options: Options): Search {
  const { seed, warm } = options;
  const bench = openBench(problem);
  const seeds = warm === null ? [] : seedsOf(orderOf(bench, warm), warm);
  return new OpenSearch(problem, bench, dispatch(prepareDispatch(problem)), { seed, warm, seeds });
}

/** Searches for plans without some work, from a plan of a problem: what all of them need is made once. */
export class SearchesWithout {
  readonly #problem: Problem;
  readonly #prepared: Prepared;
  readonly #bench: Bench;
  readonly #warm: Plan;
  /** What the plan is as an order to be played, and what it decides, on the bench that is copied. */
  readonly #order: readonly BenchTask[];
  readonly #decided: Int32Array;
  /** By piece: the first that is just like it. */
  readonly #alike: readonly number[];
  readonly #seed: number;

  constructor(problem: Problem, warm: Plan, seed: number) {
    this.#problem = problem;
    this.#prepared = prepareDispatch(problem);
    this.#bench = makeBench(problem);
    measureTails(this.#bench);
    this.#warm = warm;
    this.#order = orderOf(this.#bench, warm);
    this.#decided = decisionsOf(this.#order, warm);
    this.#alike = firstAlike(problem);
    this.#seed = seed;
  }

  /** The same search as one begun for the problem with these tasks left until a minute. */
  begin(leave: Leave): Search {
    const problem = leaveUntil(this.#problem, leave);
    const bench = copyBench(this.#bench, leave);
    beginBench(bench);
    const warm = this.#warm;
    const order = listOf(this.#order, ({ index }) => at(bench.tasks, index));
    const seeds = [plainSeed(order), { order, decided: this.#decided, cost: 0 }];
    const spared = spareLeft(bench, order, warm, this.#alike, leave);
    if (spared !== null) seeds.push({ order: spared, decided: this.#decided, cost: 0 });
    const options = { seed: this.#seed, warm, seeds };
    return new OpenSearch(problem, bench, dispatch(this.#prepared, leave), options);
  }
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

  /** @param seeds orders to let the best one of stand, or that of dispatch if it costs less */
  constructor(
    problem: Problem,
    bench: Bench,
    dispatched: Plan,
    { seed, warm, seeds }: Options & { readonly seeds: readonly Solution[] },
  ) {
    this.#problem = problem;
    this.#plan = dispatched;
    this.#score = scorePlan(problem, dispatched);
    this.#bound = lowerBound(bench);
    this.#player = new Player(bench);
    this.#standBest([...seeds, plainSeed(orderOf(bench, dispatched))]);
    if (warm !== null && bench.tasks.length <= MOST_PROVEN) this.#showWarm(warm);
    const { length } = this.#player.order;
    // The rules were tried when the warm plan was found.
    const ranks = warm === null ? simpleRanks : [asPlanned(warm)];
    const options = { ranks, withRules: warm === null, alike: () => firstAlike(problem) };
    this.#anneal = length > 1 ? new Anneal(this.#player, chanceFrom(seed), options) : null;
    this.#proving = new Proving(problem, length);
  }

  /** A small warm plan is shown as it is where it still holds and its order played is dearer. */
  #showWarm(warm: Plan): void {
    const score = scorePlan(this.#problem, warm);
    if (score.total >= Math.min(this.#player.cost, this.#score.total)) return;
    if (checkPlan(this.#problem, warm).length > 0) return;
    this.#plan = warm;
    this.#score = score;
  }

  /** Lets the order stand that costs least: what stands already, or the first of these that does. */
  #standBest(seeds: readonly Solution[]): void {
    const player = this.#player;
    for (const seed of seeds) {
      if (player.order.length === 0) player.adopt(seed);
      else player.adoptIfLess(seed);
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
    this.#standBest(seedsOf(orderOf(this.#player.bench, plan), plan));
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

/** The order of a plan as it comes, and with what the plan shares and sets up. */
function seedsOf(order: readonly BenchTask[], plan: Plan): Solution[] {
  return [plainSeed(order), { order, decided: decisionsOf(order, plan), cost: 0 }];
}

function plainSeed(order: readonly BenchTask[]): Solution {
  return { order, decided: new Int32Array(2 * order.length), cost: 0 };
}

/** The same problem with these tasks not begun before a minute: what leaving them until then means. */
export function leaveUntil(problem: Problem, { tasks: left, until }: Leave): Problem {
  const tasks = [...problem.tasks];
  for (const index of left) {
    const task = at(tasks, index);
    if (task.release === null || task.running) continue;
    tasks[index] = { ...task, release: Math.max(task.release, until) };
  }
  return { ...problem, tasks };
}

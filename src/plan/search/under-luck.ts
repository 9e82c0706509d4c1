import { at } from "../at.ts";
import { type Chance, chanceFrom } from "../chance.ts";
import type { Plan } from "../plan.ts";
import type { Problem } from "../problem.ts";
import { scorePlan } from "../score.ts";
import { underLuck } from "./luck.ts";
import { planOf } from "./plan-of.ts";
import { type Playing, playing } from "./play-on.ts";
import { asPlanned, playByRank, type Rank, simpleRanks } from "./simple-orders.ts";

/** How many ways the shop might turn out are looked at. */
const TURNS = 16;

/**
 * By how many standard errors of the mean a simple way must cost less than the plan. It is followed as well as it can be,
 * but a plan is made anew as the shop turns out, which the turns do not show: so a plan does better than they tell. By
 * trial of 0 to 1 in simulated weeks (DEVELOPERS.md).
 */
const CLEAR = 0.5;

/**
 * By what share of the whole a simple way may be dearer than the plan as thought and yet count as its equal: then it is
 * followed unless it costs more on average. A plan made anew act by act changes its mind between equals, an order does not.
 * By trial (DEVELOPERS.md).
 */
const NEARLY = 0.001;

/** A plan, or the simple order that costs clearly less on average under luck, or is its equal: see `ChoiceUnderLuck`. */
export function bestUnderLuck(problem: Problem, plan: Plan, seed: number): Plan {
  return new ChoiceUnderLuck(problem, seed).best(plan);
}

/** What a maker does without a plan. */
interface SimpleWay {
  readonly rank: Rank;
  /** What it comes to if all goes as thought. */
  readonly plan: Plan;
  readonly cost: number;
  /** What it costs in each turn made so far; Infinity: windows were missed for good. */
  readonly costs: number[];
}

/**
 * Chooses, of a plan and what a maker does without one, what costs least on average as the shop might turn out. A
 * plan that is the best if all goes as thought may have every piece just make it before the bench shuts, and then some do
 * not: what keeps slack costs less under luck. Each is followed as a list of what goes first, so that nothing waits for
 * what cannot be begun; all meet the same luck. (Several policies rolled out, the best followed for one step: D.
 * Bertsekas, D. Castanon, Rollout algorithms for stochastic scheduling problems, Journal of Heuristics 5, 1999.)
 *
 * For one problem and plans of it that get better: what the simple ways cost is found out once.
 */
export class ChoiceUnderLuck {
  readonly #problem: Problem;
  readonly #chance: Chance;
  #ways: readonly SimpleWay[] | null = null;
  readonly #turns: Playing[] = [];

  constructor(problem: Problem, seed: number) {
    this.#problem = problem;
    this.#chance = chanceFrom(seed);
  }

  /**
   * Makes one turn more of those that `best` of the plan needs, so that its work can be done bit by bit.
   *
   * @returns whether there was one to make
   */
  prepare(plan: Plan): boolean {
    if (this.#turns.length === TURNS || this.#othersThan(plan).length === 0) return false;
    const turn = playing(underLuck(this.#problem, this.#chance));
    this.#turns.push(turn);
    for (const { rank, costs } of this.#simpleWays()) costs.push(costIn(turn, rank));
    return true;
  }

  /** Where all begin with the same work there is nothing to choose yet, and the plan stands. */
  best(plan: Plan): Plan {
    while (this.prepare(plan)) {}
    const others = this.#othersThan(plan);
    if (others.length === 0) return plan;
    const rank = asPlanned(plan);
    const planned = this.#turns.map((turn) => costIn(turn, rank));
    // A plan that begins as a simple order does is as steady as that one.
    const isSteady = others.length < this.#simpleWays().length;
    const nearly = isSteady ? Number.NEGATIVE_INFINITY : (1 + NEARLY) * scorePlan(this.#problem, plan).total;
    let best: Plan | null = null;
    let most = 0;
    for (const way of others) {
      const isNear = way.cost <= nearly;
      const saved = clearlySaved(planned, way.costs, isNear ? 0 : CLEAR);
      const isBest = isNear && best === null ? saved >= 0 : saved > most;
      if (!isBest) continue;
      best = way.plan;
      most = saved;
    }
    return best ?? plan;
  }

  /** The simple ways that begin with other work. */
  #othersThan(plan: Plan): SimpleWay[] {
    return this.#simpleWays().filter((way) => !beginsAlike(way.plan, plan, this.#problem));
  }

  #simpleWays(): readonly SimpleWay[] {
    this.#ways ??= simpleWays(this.#problem);
    return this.#ways;
  }
}

function costIn(turn: Playing, rank: Rank): number {
  return playByRank(rank, ...turn, Number.POSITIVE_INFINITY);
}

/**
 * What other costs save on average over some turns, less so many standard errors of that mean: differences in the same
 * turns waver less than the costs themselves (paired comparison with common random numbers: A. Law, W. Kelton, Simulation
 * Modeling and Analysis, chapters 10 and 11, from memory). What costs without end in the same turns as the other saves
 * nothing there; -Infinity: each does in turns in which the other does not.
 */
export function clearlySaved(costs: readonly number[], others: readonly number[], errors: number): number {
  const saved = costs.map((cost, turn) => (cost === others[turn] ? 0 : cost - at(others, turn)));
  const mean = sum(saved) / saved.length;
  if (!Number.isFinite(mean)) return Number.isNaN(mean) ? Number.NEGATIVE_INFINITY : mean;
  const squares = sum(saved.map((one) => (one - mean) ** 2));
  return mean - errors * Math.sqrt(squares / (saved.length - 1) / saved.length);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((all, one) => all + one, 0);
}

function simpleWays(problem: Problem): SimpleWay[] {
  const asThought = playing(problem);
  return simpleRanks.flatMap((rank) => {
    const cost = playByRank(rank, ...asThought, Number.POSITIVE_INFINITY);
    return cost === Number.POSITIVE_INFINITY
      ? []
      : [{ rank, cost, plan: planOf(asThought[0].bench), costs: [] }];
  });
}

/** Whether two plans begin the same work first, at the same minute. */
function beginsAlike(one: Plan, other: Plan, { tasks }: Problem): boolean {
  const first = ({ visits }: Plan) => visits.find(({ task }) => !at(tasks, task).running);
  const [a, b] = [first(one), first(other)];
  return a?.task === b?.task && a?.part === b?.part && a?.start === b?.start && a?.setUp === b?.setUp;
}

import { at } from "../at.ts";
import { chanceFrom } from "../chance.ts";
import type { Plan } from "../plan.ts";
import type { Problem } from "../problem.ts";
import { underLuck } from "./luck.ts";
import { planOf } from "./plan-of.ts";
import { type Playing, playing } from "./play-on.ts";
import { asPlanned, playByRank, type Rank, simpleRanks } from "./simple-orders.ts";

/** How many ways the shop might turn out are looked at. */
const TURNS = 8;

/**
 * A simple way must cost less by so much. It is followed as well as it can be, but a plan is made anew as the shop turns
 * out, which the turns do not show: so a plan does better than they tell. By trial of 0, 1 and 4 % in simulated weeks: with
 * 4 most is lost where many are out, with 0 where few are.
 */
const LESS_BY = 0.01;

/** A plan, or the simple order that costs clearly less on average under luck: see `ChoiceUnderLuck`. */
export function bestUnderLuck(problem: Problem, plan: Plan, seed: number): Plan {
  return new ChoiceUnderLuck(problem, seed).best(plan);
}

/** What a maker does without a plan. */
interface SimpleWay {
  readonly rank: Rank;
  /** What it comes to if all goes as thought. */
  readonly plan: Plan;
  /** What it costs in all turns together; null: not asked yet. */
  cost: number | null;
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
  readonly #seed: number;
  #ways: readonly SimpleWay[] | null = null;
  #turns: readonly Playing[] | null = null;

  constructor(problem: Problem, seed: number) {
    this.#problem = problem;
    this.#seed = seed;
  }

  /** Where all begin with the same work there is nothing to choose yet, and the plan stands; so it does of near equals. */
  best(plan: Plan): Plan {
    this.#ways ??= simpleWays(this.#problem);
    const others = this.#ways.filter((way) => !beginsAlike(way.plan, plan, this.#problem));
    if (others.length === 0) return plan;
    let best = plan;
    let least = (1 - LESS_BY) * this.#costOf(asPlanned(plan));
    for (const way of others) {
      way.cost ??= this.#costOf(way.rank);
      if (way.cost >= least) continue;
      best = way.plan;
      least = way.cost;
    }
    return best;
  }

  /** What a way costs in all turns together; Infinity: windows were missed for good. */
  #costOf(rank: Rank): number {
    this.#turns ??= turnsOf(this.#problem, this.#seed);
    return this.#turns.reduce((sum, turn) => sum + playByRank(rank, ...turn, Number.POSITIVE_INFINITY), 0);
  }
}

function simpleWays(problem: Problem): SimpleWay[] {
  const asThought = playing(problem);
  return simpleRanks.flatMap((rank) => {
    const cost = playByRank(rank, ...asThought, Number.POSITIVE_INFINITY);
    return cost === Number.POSITIVE_INFINITY ? [] : [{ rank, plan: planOf(asThought[0].bench), cost: null }];
  });
}

function turnsOf(problem: Problem, seed: number): Playing[] {
  const chance = chanceFrom(seed);
  return Array.from({ length: TURNS }, () => playing(underLuck(problem, chance)));
}

/** Whether two plans begin the same work first, at the same minute. */
function beginsAlike(one: Plan, other: Plan, { tasks }: Problem): boolean {
  const first = ({ visits }: Plan) => visits.find(({ task }) => !at(tasks, task).running);
  const [a, b] = [first(one), first(other)];
  return a?.task === b?.task && a?.part === b?.part && a?.start === b?.start && a?.setUp === b?.setUp;
}

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
 * Of a plan, and what a maker does without one, that which costs least on average as the shop might turn out. A plan
 * that is the best if all goes as thought may have every piece just make it before the bench shuts, and then some do
 * not: what keeps slack costs less under luck. Each is followed as a list of what goes first, so that nothing waits for
 * what cannot be begun; all meet the same luck. (Several policies rolled out, the best followed for one step: D.
 * Bertsekas, D. Castanon, Rollout algorithms for stochastic scheduling problems, Journal of Heuristics 5, 1999.)
 *
 * Where all begin with the same work there is nothing to choose yet, and the plan stands; so it does of equals.
 */
export function bestUnderLuck(problem: Problem, plan: Plan, seed: number): Plan {
  const asThought = playing(problem);
  const ways: Way[] = [{ rank: asPlanned(plan), plan }];
  for (const rank of simpleRanks) {
    const cost = playByRank(rank, ...asThought, Number.POSITIVE_INFINITY);
    if (cost < Number.POSITIVE_INFINITY) ways.push({ rank, plan: planOf(asThought[0].bench) });
  }
  const others = ways.filter((way) => !beginsAlike(way.plan, plan, problem));
  return others.length === 0 ? plan : cheapest(at(ways, 0), others, turnsOf(problem, seed)).plan;
}

interface Way {
  readonly rank: Rank;
  /** What it comes to if all goes as thought. */
  readonly plan: Plan;
}

function turnsOf(problem: Problem, seed: number): Playing[] {
  const chance = chanceFrom(seed);
  return Array.from({ length: TURNS }, () => playing(underLuck(problem, chance)));
}

function cheapest(first: Way, others: readonly Way[], turns: readonly Playing[]): Way {
  let best = first;
  let least = costOf(first, turns, Number.POSITIVE_INFINITY);
  for (const way of others) {
    const cost = costOf(way, turns, least);
    if (cost >= least) continue;
    best = way;
    least = cost;
  }
  return best;
}

/** What a way costs in all turns together; Infinity: more than the ceiling, or windows were missed for good. */
function costOf({ rank }: Way, turns: readonly Playing[], ceiling: number): number {
  let sum = 0;
  for (const turn of turns) {
    sum += playByRank(rank, ...turn, ceiling - sum);
    if (sum >= ceiling) return Number.POSITIVE_INFINITY;
  }
  return sum;
}

/** Whether two plans begin the same work first, at the same minute. */
function beginsAlike(one: Plan, other: Plan, { tasks }: Problem): boolean {
  const first = ({ visits }: Plan) => visits.find(({ task }) => !at(tasks, task).running);
  const [a, b] = [first(one), first(other)];
  return a?.task === b?.task && a?.part === b?.part && a?.start === b?.start && a?.setUp === b?.setUp;
}

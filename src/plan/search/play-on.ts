import type { Plan } from "../plan.ts";
import type { Problem } from "../problem.ts";
import { openBench } from "./open-bench.ts";
import { decisionsOf, orderOf } from "./order-of.ts";
import { planOf } from "./plan-of.ts";
import { Player } from "./play-order.ts";
import { Recreate } from "./recreate.ts";
import { asPlanned, playByRank } from "./simple-orders.ts";

/** A bench to play orders and ranks on. */
export type Playing = readonly [Player, Recreate];

export function playing(problem: Problem): Playing {
  const player = new Player(openBench(problem));
  return [player, new Recreate(player)];
}

/**
 * A plan of fewer tasks as it stands, and after it in their order those it knows nothing of, each as soon as can be.
 * Null: they can be done in no way.
 */
export function playAfter(problem: Problem, plan: Plan): Plan | null {
  const [player] = playing(problem);
  const { bench } = player;
  const order = orderOf(bench, plan);
  player.playWhole({ order, decided: decisionsOf(order, plan), cost: 0 });
  return player.cost === Number.POSITIVE_INFINITY ? null : planOf(bench);
}

/**
 * A plan of an earlier moment gone on with: its order as it comes, with what it shares and sets up, or as a list of what
 * goes first where nothing waits for what cannot be begun, whichever costs least. Null: it can be gone on with in no way.
 */
export function playOn(problem: Problem, plan: Plan): Plan | null {
  const [player, recreate] = playing(problem);
  const { bench } = player;
  let best: Plan | null = null;
  let least = Number.POSITIVE_INFINITY;
  const consider = (cost: number): void => {
    if (cost >= least) return;
    least = cost;
    best = planOf(bench);
  };
  const order = orderOf(bench, plan);
  for (const decided of [new Int32Array(2 * order.length), decisionsOf(order, plan)]) {
    player.playWhole({ order, decided, cost: 0 });
    consider(player.cost);
  }
  consider(playByRank(asPlanned(plan), player, recreate, Number.POSITIVE_INFINITY));
  return best;
}

import type { Minutes } from "../time/instant.ts";
import type { Plan } from "./plan.ts";
import type { Prices, Problem } from "./problem.ts";

/** The shop's own prices: a promise broken is dear, work made necessary by a missed window dearer than setting up. */
export const usualPrices: Prices = { late: 10, flow: 1, amends: 5, setUp: 1 };

/** What a plan costs, to be least, with the parts it is made of. All in whole minutes but `total`. */
export interface Score {
  readonly total: number;
  /** Weight times minutes late, over all pieces. */
  readonly tardiness: number;
  /** Minutes from release to finish, over all pieces. */
  readonly flow: Minutes;
  /** Minutes of preparation and mending. */
  readonly amends: Minutes;
  readonly setUp: Minutes;
}

/**
 * Weight times tardiness, flow, minutes of preparation and mending, and set-up minutes, each at the problem's price.
 * A piece not finished within the horizon counts as finished at it: the least it can cost.
 *
 * @example Two pieces finished at 26 and 32 with one melt of 20 min and none late: 26 + 32 + 20 = 78.
 */
export function scorePlan(problem: Problem, plan: Plan): Score {
  let tardiness = 0;
  let flow = 0;
  for (const [index, piece] of problem.pieces.entries()) {
    const finish = plan.finish[index] ?? problem.horizon;
    if (piece.due !== null) tardiness += piece.weight * Math.max(0, finish - piece.due);
    flow += Math.max(0, finish - piece.release);
  }
  let amends = 0;
  let setUp = 0;
  for (const visit of plan.visits) {
    setUp += visit.setUp;
    // What is worked again after a mend is, too, what the missed window cost.
    if (visit.part !== "step") amends += visit.end - visit.start;
  }
  const { prices } = problem;
  const total = prices.late * tardiness + prices.flow * flow + prices.amends * amends + prices.setUp * setUp;
  return { total, tardiness, flow, amends, setUp };
}

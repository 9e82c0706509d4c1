import type { LeftRow } from "../journal/journal.ts";
import { after, type Minutes } from "../time/instant.ts";
import { isLeftAnyway, type LeftWork } from "./left-work.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import { tagsOf } from "./plan-row.ts";
import type { Problem } from "./problem.ts";
import { scorePlan } from "./score.ts";
import { beginSearch, leaveUntil } from "./search/search.ts";

/** How long each piece of work is searched for a plan without it, in rounds: the same in every program. */
const ROUNDS = 8;

/** A plan without some work, by the numbers of its problem: plain data, as it comes from another thread. */
export interface PlanWithout {
  /** Minutes of preparation and mending more. */
  readonly amends: Minutes;
  /** When each piece is finished, as in Plan. */
  readonly finish: Plan["finish"];
}

/**
 * Plans again with some work put off to the end of the bench session, from the plan as it stands: the work keeps its
 * place in the order, and what is gained by another order is searched for in a fixed number of rounds.
 */
export function planWithout(
  problem: Problem,
  plan: Plan,
  { tasks, until }: Pick<LeftWork, "tasks" | "until">,
  seed: number,
): PlanWithout {
  if (isLeftAnyway({ tasks, until }, plan)) return { amends: 0, finish: plan.finish };
  const left = leaveUntil(problem, tasks, until);
  const search = beginSearch(left, { seed, warm: plan });
  search.go(ROUNDS);
  const { plan: without } = search.found;
  return {
    amends: scorePlan(problem, without).amends - scorePlan(problem, plan).amends,
    finish: without.finish,
  };
}

/** The same in words of the shop, to be kept with the plan. */
export function leftRow(
  { problem, pieces }: ShopProblem,
  key: string,
  { amends, finish }: PlanWithout,
): LeftRow {
  return {
    key,
    amends,
    finish: tagsOf(pieces).map((tag, piece) => {
      const minutes = finish[piece] ?? null;
      return [tag, minutes === null ? null : after(problem.origin, minutes)];
    }),
  };
}

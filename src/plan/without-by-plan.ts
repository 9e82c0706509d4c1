import type { Tag } from "../journal/event.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import type { WithoutIt } from "./cost-of-leaving.ts";
import { isLeftAnyway, type LeftWork } from "./left-work.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import type { Problem } from "./problem.ts";
import { scorePlan } from "./score.ts";
import { beginSearch, leaveUntil } from "./search/search.ts";

/** How long each piece of work is searched for a plan without it, in rounds: the same in every program. */
const ROUNDS = 8;

/** A plan without some work, by the numbers of its problem: plain data, as it comes from another thread. */
export interface PlanWithout {
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

/** Sets a plan without some work against the plan itself, in words of the shop. */
export function compareWithout(
  { problem, pieces: made }: ShopProblem,
  plan: Pick<Plan, "finish">,
  without: PlanWithout,
  work: Pick<LeftWork, "pieces">,
): WithoutIt {
  const { origin, pieces } = problem;
  const first = (finish: Plan["finish"]): Instant | null => {
    const minutes = Math.min(...work.pieces.map((piece) => finish[piece] ?? Number.POSITIVE_INFINITY));
    return minutes === Number.POSITIVE_INFINITY ? null : after(origin, minutes);
  };
  const broken: Tag[] = [];
  const later: { tag: Tag; minutes: Minutes }[] = [];
  for (const [piece, { due }] of pieces.entries()) {
    const tag = made[piece]?.tag ?? null;
    if (tag === null) continue;
    const planned = plan.finish[piece] ?? null;
    const left = without.finish[piece] ?? null;
    // A weight stands for "due now" and is no promise.
    if (due !== null && due > 0 && planned !== null && planned <= due && (left === null || left > due))
      broken.push(tag);
    if (planned !== null && left !== null && left > planned && !work.pieces.includes(piece))
      later.push({ tag, minutes: left - planned });
  }
  later.sort((a, b) => b.minutes - a.minutes || a.tag - b.tag);
  return {
    finishNow: first(plan.finish),
    finishLeft: first(without.finish),
    others: { amends: without.amends, broken, later },
  };
}

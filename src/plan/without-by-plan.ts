import type { LeftRow } from "../journal/journal.ts";
import { after, type Minutes } from "../time/instant.ts";
import type { Leave } from "./bench-run.ts";
import { isLeftAnyway } from "./left-work.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import { tagsOf } from "./plan-row.ts";
import type { Problem } from "./problem.ts";
import { scorePlan } from "./score.ts";
import { type Search, SearchesWithout } from "./search/search.ts";

/** A plan without some work, by the numbers of its problem: plain data, as it comes from another thread. */
export interface PlanWithout {
  /** Minutes of preparation and mending more. */
  readonly amends: Minutes;
  /** When each piece is finished, as in Plan. */
  readonly finish: Plan["finish"];
}

/** Plans without some work, from one plan of a problem. */
export class PlansWithout {
  readonly #problem: Problem;
  readonly #plan: Plan;
  readonly #searches: SearchesWithout;

  constructor(problem: Problem, plan: Plan, seed: number) {
    this.#problem = problem;
    this.#plan = plan;
    this.#searches = new SearchesWithout(problem, plan, seed);
  }

  begin(leave: Leave): PlanningWithout {
    const search = isLeftAnyway(leave, this.#plan) ? null : this.#searches.begin(leave);
    return new PlanningWithout(this.#problem, this.#plan, search);
  }
}

/**
 * Plans again with some work put off to the end of the bench session, from the plan as it stands: the work keeps its
 * place in the order, and what is gained by another order is searched for, as long as it is told to.
 */
export class PlanningWithout {
  readonly #problem: Problem;
  readonly #plan: Plan;
  /** Null: the plan leaves the work by itself. */
  readonly #search: Search | null;

  constructor(problem: Problem, plan: Plan, search: Search | null) {
    this.#problem = problem;
    this.#plan = plan;
    this.#search = search;
  }

  go(rounds: number): void {
    this.#search?.go(rounds);
  }

  /** Rounds searched so far; Infinity: there is nothing to search for. */
  get rounds(): number {
    return this.#search?.found.rounds ?? Number.POSITIVE_INFINITY;
  }

  get found(): PlanWithout {
    const { plan } = this.#search?.found ?? { plan: this.#plan };
    const amends = scorePlan(this.#problem, plan).amends - scorePlan(this.#problem, this.#plan).amends;
    return { amends, finish: plan.finish };
  }
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

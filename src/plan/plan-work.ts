import type { Seq } from "../journal/event.ts";
import { checkPlan } from "./check-plan.ts";
import type { LeftWork } from "./left-work.ts";
import type { Plan } from "./plan.ts";
import { WORTH_IT } from "./plan-row.ts";
import type { Problem } from "./problem.ts";
import { scorePlan } from "./score.ts";
import { playOn } from "./search/play-on.ts";
import { beginSearch, type Search } from "./search/search.ts";
import { ChoiceUnderLuck } from "./search/under-luck.ts";
import { type PlanningWithout, PlansWithout, type PlanWithout } from "./without-by-plan.ts";

/** A plan to search for: plain data, as it goes to another thread. */
export interface PlanJob {
  readonly id: number;
  /** The newest event that the problem knows. */
  readonly seq: Seq;
  readonly problem: Problem;
  readonly warm: Plan | null;
  /** `warm` is the plan kept for this very shop: only one better by a hundredth takes its place. */
  readonly kept: boolean;
  readonly seed: number;
  /** Rounds to be searched at most. */
  readonly rounds: number;
  /** Work whose leaving is to be reckoned. */
  readonly leaves: readonly Pick<LeftWork, "tasks" | "until">[];
}

/** What a job has found: plain data, as it comes back. */
export interface PlanNews {
  readonly id: number;
  readonly seq: Seq;
  /** A plan to be kept, as checked; null: the one known still stands. */
  readonly plan: Plan | null;
  /** By what share of the least possible cost that plan may cost more; 0: proven best; Infinity: nothing is known. */
  readonly gap: number;
  readonly rounds: number;
  /** What leaving each work does to the plan known now, told at first and once more at the end; null: not in this news. */
  readonly without: readonly PlanWithout[] | null;
  /** Nothing more will come. */
  readonly done: boolean;
}

/** How long a plan without some work is searched for, in rounds: before it is told at first, and before it is told for good. */
const LEFT_AT_FIRST = 8;
const LEFT_IN_ALL = 300;

/** Rounds searched before anything is told of a shop that no plan is kept for, and between two looks at the clock. */
const AT_FIRST = 60;
const AT_ONCE = 10;

interface Known {
  readonly plan: Plan;
  readonly total: number;
  /** What the best plan cost when this one was chosen: this one, or one that is worse under luck. */
  readonly searched: number;
}

/** The work on one job, in steps so short that whoever takes them can look at the clock and for a newer job. */
export class PlanWork {
  readonly #job: PlanJob;
  readonly #search: Search;
  readonly #choice: ChoiceUnderLuck;
  /** A plan was found that is worth telling, and what does best under luck is being chosen. */
  #isChoosing = false;
  /** The plan as others know it; null: they know none. */
  #known: Known | null = null;
  /** Where they come from; null: none was begun. */
  #plans: PlansWithout | null = null;
  /** Plans without each work, as far as they were begun for the plan known now. */
  #without: PlanningWithout[] = [];
  /** How many of those were searched for in all. */
  #refined = 0;
  #ended = false;

  constructor(job: PlanJob) {
    this.#job = job;
    this.#search = beginSearch(job.problem, { seed: job.seed, warm: job.warm });
    this.#choice = new ChoiceUnderLuck(job.problem, job.seed);
    const plan = job.kept && job.warm !== null ? playOn(job.problem, job.warm) : null;
    if (plan === null || checkPlan(job.problem, plan).length > 0) return;
    const { total } = scorePlan(job.problem, plan);
    this.#known = { plan, total, searched: total };
  }

  get ended(): boolean {
    return this.#ended;
  }

  /**
   * Takes one step: first a plan where none is known, then at first what leaving each work costs, then a better plan,
   * and so on; when the rounds are spent, what leaving costs once more and more exactly.
   *
   * @param mayTell whether enough time has passed since the last news for a better plan to be told
   * @returns what there is to tell; null: nothing this time
   */
  step(mayTell: boolean): PlanNews | null {
    if (this.#isChoosing) return this.#choice.prepare(this.#search.found.plan) ? null : this.#tellPlan();
    const known = this.#known;
    if (known === null) {
      this.#searchOn(AT_FIRST);
      this.#isChoosing = true;
      return null;
    }
    if (this.#without.length < this.#job.leaves.length) return this.#beginNext(known.plan);
    if (!this.#isSpent()) this.#searchOn(AT_ONCE);
    const spent = this.#isSpent();
    // A plan that costs nothing cannot be bettered, whatever the share.
    const { total } = this.#search.found.score;
    if (total < known.searched && total <= known.searched * (1 - WORTH_IT) && (mayTell || spent)) {
      this.#isChoosing = true;
      return null;
    }
    return spent ? this.#refineNext() : null;
  }

  /** Searches on for one of the plans without some work; when all have been searched for, that is the end. */
  #refineNext(): PlanNews | null {
    const next = this.#without[this.#refined];
    next?.go(AT_ONCE);
    if (next !== undefined && next.rounds < LEFT_IN_ALL) return null;
    this.#refined++;
    if (this.#refined < this.#without.length) return null;
    this.#ended = true;
    return this.#news(null, this.#without);
  }

  #isSpent(): boolean {
    const { proven, rounds } = this.#search.found;
    return proven || rounds >= this.#job.rounds;
  }

  #searchOn(rounds: number): void {
    this.#search.go(Math.max(0, Math.min(rounds, this.#job.rounds - this.#search.found.rounds)));
  }

  /**
   * Tells the best plan, or the simple order that does better than it under luck, unless that is what is known.
   *
   * @throws Error when the search broke a constraint: that is our own mistake, and no such plan is shown
   */
  #tellPlan(): PlanNews | null {
    const { problem } = this.#job;
    const { score, plan: searched } = this.#search.found;
    const plan = this.#choice.best(searched);
    this.#isChoosing = false;
    const wrong = checkPlan(problem, plan);
    if (wrong.length > 0)
      throw new Error(`the search found a plan that breaks a constraint: ${String(wrong[0])}`);
    const { total } = scorePlan(problem, plan);
    const known = this.#known;
    this.#known = { plan, total, searched: score.total };
    if (known !== null && plan !== searched && isAlike(plan, known.plan)) return null;
    this.#plans = null;
    this.#without = [];
    this.#refined = 0;
    return this.#news(plan);
  }

  #beginNext(plan: Plan): PlanNews | null {
    const { problem, leaves, seed } = this.#job;
    const next = leaves[this.#without.length];
    if (next !== undefined) {
      this.#plans ??= new PlansWithout(problem, plan, seed);
      const without = this.#plans.begin(next);
      without.go(LEFT_AT_FIRST);
      this.#without.push(without);
    }
    return this.#without.length < leaves.length ? null : this.#news(null, this.#without);
  }

  /** By what share the plan known costs more than the best possible at most. */
  #gap(): number {
    const { bound, score, proven } = this.#search.found;
    const { total, searched } = this.#known ?? { total: score.total, searched: score.total };
    if ((proven && total <= searched) || total <= bound) return 0;
    return bound <= 0 ? Number.POSITIVE_INFINITY : (total - bound) / bound;
  }

  #news(plan: Plan | null, without: readonly PlanningWithout[] | null = null): PlanNews {
    const { id, seq } = this.#job;
    const { rounds } = this.#search.found;
    return {
      id,
      seq,
      plan,
      gap: this.#gap(),
      rounds,
      without: without?.map(({ found }) => found) ?? null,
      done: this.#ended,
    };
  }
}

/** Whether two plans begin the same work at the same minutes. */
function isAlike({ visits }: Plan, other: Plan): boolean {
  const one = other.visits;
  return (
    visits.length === one.length &&
    visits.every(({ task, start }, index) => task === one[index]?.task && start === one[index]?.start)
  );
}

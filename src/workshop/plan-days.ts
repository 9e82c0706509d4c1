import type { PlanRow } from "../journal/journal.ts";
import { type FitsNoSession, planAhead, planIf } from "../plan/ahead/plan-ahead.ts";
import type { Searching } from "../plan/ahead/searched-shop.ts";
import type { WhatIf } from "../plan/ahead/what-if.ts";
import type { PlanAnswer } from "../plan/plan-answer.ts";
import { isCurrent, rowOf, settingsOf, warmPlan } from "../plan/plan-row.ts";
import { readShop } from "../plan/plan-shop.ts";
import { beginSearch, type Search } from "../plan/search/search.ts";
import type { Instant } from "../time/instant.ts";
import type { Workshop } from "./workshop.ts";

/** How long a plan is searched for at most, in milliseconds; with a what-if each of the two. */
const PATIENCE = 1000;
/** Rounds between two looks at the clock. */
const ROUNDS = 50;
/** A plan of so many days is of the very problem that the plan kept is of. */
const DAYS_KEPT = 7;
/** The same search everywhere, so that one plan comes out everywhere. */
const SEED = 1;

/** How a plan is asked for. */
interface Asking {
  /** Null: now. */
  readonly at: Instant | null;
  /** Rounds of search at most; time alone counts where they are without end. */
  readonly rounds: number;
}

/**
 * The coming days of the shop. A plan kept that knows every act is shown as it is, so that it is the one `now` goes by;
 * else it seeds a search of a second, and what that finds is kept in its place.
 */
export async function planDays(
  workshop: Workshop,
  days: number,
  { at, rounds }: Asking,
): Promise<PlanAnswer> {
  const { shop, context, row } = await ask(workshop, at);
  const air = await workshop.journal.newestAir();
  const about = { seq: shop.newest, settings: settingsOf(readShop(shop, context)), air, seed: SEED };
  const isOurs = at === null && days <= DAYS_KEPT;
  const holds = isOurs && row !== null && isCurrent(row, about.seq, about.settings);
  const { answer, base } = planAhead(shop, context, days, searchWith(row, holds ? 0 : rounds));
  if (isOurs && !holds && base.quality.basis === "plan" && base.rounds > 0) {
    await keep(rowOf(base.plan, base.made, { ...about, rounds: base.rounds }), workshop);
  }
  return answer;
}

/** The coming days under a what-if, searched for beside the plan without it. Nothing of it is kept. */
export async function planDaysIf(
  workshop: Workshop,
  days: number,
  whatIf: WhatIf,
  { at, rounds }: Asking,
): Promise<PlanAnswer | { readonly fitsNoSession: FitsNoSession }> {
  const { shop, context, row } = await ask(workshop, at);
  return planIf(shop, context, days, whatIf, searchWith(row, rounds));
}

async function ask(workshop: Workshop, at: Instant | null) {
  const then = at ?? undefined;
  const shop = await workshop.shop(undefined, then);
  const [context, row] = await Promise.all([workshop.planContext(shop, then), workshop.readPlan()]);
  return { shop, context, row };
}

function searchWith(row: PlanRow | null, rounds: number): Searching {
  return {
    begin: (made, near) => {
      const warm = near ?? (row === null ? null : warmPlan(row, made));
      return beginSearch(made.problem, { seed: SEED, warm });
    },
    goOn: (search) => searchOn(search, rounds),
  };
}

/** Milliseconds are looked at between rounds only: what a round does never depends on them. */
function searchOn(search: Search, most: number): void {
  const end = performance.now() + PATIENCE;
  while (!search.found.proven && search.found.rounds < most && performance.now() < end) {
    search.go(Math.min(ROUNDS, most - search.found.rounds));
  }
}

/** Keeps a plan for whatever asks next; a journal that cannot be written now goes without. */
async function keep(row: PlanRow, { journal }: Workshop): Promise<void> {
  try {
    await journal.keepPlan(row);
  } catch {
    // The plan is good all the same, only nobody else has it.
  }
}

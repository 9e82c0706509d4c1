import type { PlanRow } from "../journal/journal.ts";
import { type Ahead, type FitsNoSession, planAhead, planIf } from "../plan/ahead/plan-ahead.ts";
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
const ROUNDS = 10;
/** A plan of so many days is of the very problem that the plan kept is of. */
const DAYS_KEPT = 7;
/** The same search everywhere, so that one plan comes out everywhere. */
const SEED = 1;

/** A plan must be better by this share of its cost to take the place of one kept that holds. */
const WORTH_IT = 0.01;

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
  const asked = await ask(workshop, at);
  const isOurs = at === null && days <= DAYS_KEPT;
  const holds = isOurs && asked.isCurrent;
  const ahead = planAhead(asked.shop, asked.context, days, searchWith(asked.row, holds ? 0 : rounds));
  if (isOurs && !holds) await keep(ahead.base, asked.about, workshop);
  return ahead.answer;
}

/**
 * The coming days under a what-if, searched for beside the plan without it. Nothing of the what-if is kept; where the
 * plan without it came out better than the one known, that is, so that the next answer agrees with this one.
 */
export async function planDaysIf(
  workshop: Workshop,
  days: number,
  whatIf: WhatIf,
  { at, rounds }: Asking,
): Promise<PlanAnswer | { readonly fitsNoSession: FitsNoSession }> {
  const { shop, context, row, about, isCurrent: holds } = await ask(workshop, at);
  const ahead = planIf(shop, context, days, whatIf, searchWith(row, rounds));
  if ("fitsNoSession" in ahead) return ahead;
  const isOurs = at === null && days <= DAYS_KEPT && whatIf.added.every(({ due }) => due === null);
  const isBetter = ahead.base.score.total < ahead.began * (1 - WORTH_IT);
  if (isOurs && (!holds || isBetter)) await keep(ahead.base, about, workshop);
  return ahead.answer;
}

/** What a plan is kept with, to tell whether it still holds. */
type About = Omit<Parameters<typeof rowOf>[2], "rounds">;

async function ask(workshop: Workshop, at: Instant | null) {
  const then = at ?? undefined;
  const shop = await workshop.shop(undefined, then);
  const [context, row, air] = await Promise.all([
    workshop.planContext(shop, then),
    workshop.readPlan(),
    workshop.journal.newestAir(),
  ]);
  const settings = settingsOf(readShop(shop, context));
  const about: About = { seq: shop.newest, settings, air, seed: SEED };
  return { shop, context, row, about, isCurrent: row !== null && isCurrent(row, shop.newest, settings) };
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
async function keep(
  { plan, made, quality, rounds }: Ahead["base"],
  about: About,
  { journal }: Workshop,
): Promise<void> {
  if (quality.basis !== "plan" || rounds === 0) return;
  try {
    await journal.keepPlan(rowOf(plan, made, { ...about, rounds }));
  } catch {
    // The plan is good all the same, only nobody else has it.
  }
}

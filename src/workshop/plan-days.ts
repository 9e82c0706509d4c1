import { type Ahead, DAYS_KEPT, type FitsNoSession, planAhead, planIf } from "../plan/ahead/plan-ahead.ts";
import type { Searching } from "../plan/ahead/searched-shop.ts";
import type { WhatIf } from "../plan/ahead/what-if.ts";
import { planOfRow } from "../plan/now-by-row.ts";
import type { PlanAnswer } from "../plan/plan-answer.ts";
import { isCurrent, rowOf, SEED, settingsOf, warmPlan } from "../plan/plan-row.ts";
import { readShop } from "../plan/plan-shop.ts";
import { beginSearch, type Search } from "../plan/search/search.ts";
import { withLeaving } from "../plan/with-leaving.ts";
import type { Instant } from "../time/instant.ts";
import type { Workshop } from "./workshop.ts";

/** How long a plan is searched for at most, in milliseconds; with a what-if each of the two. */
const PATIENCE = 1000;
/** Rounds between two looks at the clock. */
const ROUNDS = 10;

/** How a plan is asked for. */
interface Asking {
  /** Null: now. */
  readonly at: Instant | null;
  /** Rounds of search at most; time alone counts where they are without end. */
  readonly rounds: number;
}

/**
 * The coming days of the shop. A plan kept that knows every act is shown as it is, so that it is the one `now` goes by;
 * else it seeds a search of a second for the plan of a week, and what that finds is kept in its place.
 */
export async function planDays(
  workshop: Workshop,
  days: number,
  { at, rounds }: Asking,
): Promise<PlanAnswer> {
  const asked = await askOf(workshop, days, { at, rounds });
  const ahead = planAhead(asked.shop, asked.context, days, searchWith(asked, rounds));
  await keep(ahead, days, asked, workshop);
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
  const asked = await askOf(workshop, days, { at, rounds });
  const ahead = planIf(asked.shop, asked.context, days, whatIf, searchWith(asked, rounds));
  if ("fitsNoSession" in ahead) return ahead;
  await keep(ahead, days, asked, workshop);
  return ahead.answer;
}

/** What a plan is kept with, to tell whether it still holds. */
type About = Omit<Parameters<typeof rowOf>[2], "rounds">;

type Asked = Awaited<ReturnType<typeof ask>>;

/** What is asked about, with a plan of the week kept where more days are asked for: they are told by that one. */
async function askOf(workshop: Workshop, days: number, { at, rounds }: Asking): Promise<Asked> {
  const asked = await ask(workshop, at);
  if (at !== null || days <= DAYS_KEPT || asked.kept !== null) return asked;
  // It would be searched for in vain.
  if (!workshop.journal.canWrite) return asked;
  const week = planAhead(asked.shop, asked.context, DAYS_KEPT, searchWith(asked, rounds));
  await keep(week, DAYS_KEPT, asked, workshop);
  return ask(workshop, at);
}

async function ask(workshop: Workshop, at: Instant | null) {
  const then = at ?? undefined;
  const shop = await workshop.shop(undefined, then);
  const [context, row, air] = await Promise.all([
    workshop.planContext(shop, then),
    workshop.readPlan(),
    workshop.journal.newestAir(),
  ]);
  const facts = readShop(shop, context);
  const settings = settingsOf(facts);
  const about: About = { seq: shop.newest, settings, air, seed: SEED };
  return {
    shop,
    context,
    facts,
    row,
    about,
    isOfNow: at === null,
    /** The plan kept, where it is of now and knows every act. */
    kept: at === null && row !== null && isCurrent(row, shop.newest, settings) ? row : null,
  };
}

function searchWith({ row, kept }: Asked, rounds: number): Searching {
  return {
    kept,
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

/**
 * Keeps a plan for whatever asks next, with what leaving work costs by it; a journal that cannot be written now goes
 * without.
 */
async function keep(
  { base, toKeep }: Ahead,
  days: number,
  asked: Asked,
  { journal }: Workshop,
): Promise<void> {
  const { facts, about, isOfNow } = asked;
  const { made, quality, rounds } = base;
  if (!isOfNow || days > DAYS_KEPT) return;
  if (toKeep === null || quality.basis !== "plan" || rounds === 0) return;
  const row = rowOf(toKeep, made, { ...about, rounds });
  const found = planOfRow(row, about.seq, facts);
  try {
    await journal.keepPlan(found === null ? row : withLeaving(row, found));
  } catch {
    // The plan is good all the same, only nobody else has it.
  }
}

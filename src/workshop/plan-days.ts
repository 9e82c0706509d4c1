import { type Ahead, type FitsNoSession, type PlanAsk, planAhead } from "../plan/ahead/plan-ahead.ts";
import type { SearchFor } from "../plan/ahead/searched-shop.ts";
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

/**
 * The coming days of the shop, at a moment (now unless said). A plan kept that knows every act is shown as it is, so
 * that it is the one `now` goes by; else it seeds a search of a second, and what that finds is kept in its place. A
 * what-if is searched for beside the plan without it, and keeps nothing.
 *
 * @param most rounds of search at most; by default time alone counts
 */
export async function planDays(
  workshop: Workshop,
  ask: PlanAsk,
  at: Instant | null = null,
  most = Number.POSITIVE_INFINITY,
): Promise<PlanAnswer | { readonly fitsNoSession: FitsNoSession }> {
  const then = at ?? undefined;
  const shop = await workshop.shop(undefined, then);
  const [context, row] = await Promise.all([workshop.planContext(shop, then), workshop.readPlan()]);
  const about = { seq: shop.newest, settings: settingsOf(readShop(shop, context)), air: 0, seed: SEED };
  const isPlain = at === null && ask.whatIf === null && ask.days <= DAYS_KEPT;
  const holds = isPlain && row !== null && isCurrent(row, about.seq, about.settings);
  const search: SearchFor = (made, near) => {
    const warm = near ?? (row === null ? null : warmPlan(row, made));
    const begun = beginSearch(made.problem, { seed: SEED, warm });
    if (!holds) searchOn(begun, most);
    return begun.found;
  };
  const ahead = planAhead(shop, context, ask, search);
  if ("fitsNoSession" in ahead) return ahead;
  if (isPlain && !holds) await keep(ahead, about, workshop);
  return ahead.answer;
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
  { base }: Ahead,
  about: Omit<Parameters<typeof rowOf>[2], "rounds">,
  { journal }: Workshop,
): Promise<void> {
  if (base.quality.basis !== "plan") return;
  try {
    await journal.keepPlan(rowOf(base.plan, base.made, { ...about, rounds: base.rounds }));
  } catch {
    // The plan is good all the same, only nobody else has it.
  }
}

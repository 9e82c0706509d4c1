import { addDays, daysBetween, instantOf, localTime } from "../../time/civil.ts";
import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { type AddedPiece, makeProblem, type ShopProblem } from "../make-problem.ts";
import type { Plan } from "../plan.ts";
import type { PlanAnswer } from "../plan-answer.ts";
import { startsOf, WORTH_IT, warmPlan } from "../plan-row.ts";
import { type NowContext, readShop, type ShopFacts } from "../plan-shop.ts";
import { carryOn, playRow, playRowOn } from "../play-row.ts";
import { scorePlan } from "../score.ts";
import type { Search } from "../search/search.ts";
import { comparePlans } from "./compare-plans.ts";
import { type TooLong, tooLong } from "./no-time.ts";
import { pieceForecasts } from "./piece-forecasts.ts";
import { plannedSessions } from "./planned-sessions.ts";
import {
  asKept,
  checkedShop,
  type ProblemAhead,
  playedShop,
  problemAhead,
  type SearchedShop,
  type Searching,
} from "./searched-shop.ts";
import { addedIf, hoursIf, type WhatIf } from "./what-if.ts";

/** A process added by a what-if has a step that no bench session is long enough for. */
export type FitsNoSession = TooLong & { readonly process: string };

const DAY: Minutes = 24 * 60;
/** Days looked at: further than what is shown, so that a plan does not end in a rush; and not without end. */
const LEAST_AHEAD = 14;
const BEYOND_SHOWN = 7;
/** A plan of so many days is of the very pieces that the plan kept is of; of more it is that plan gone on with. */
export const DAYS_KEPT = 7;
const MOST_AHEAD = 120;

/** The coming days, and the plan of the shop as it is. */
export interface Ahead {
  readonly answer: PlanAnswer;
  readonly base: SearchedShop;
  /** The plan found that it was played from, to be kept; null: the one kept stands. */
  readonly toKeep: Plan | null;
}

type Shop = Parameters<typeof readShop>[0];

/**
 * The coming days: what to work when, and when each piece is finished.
 *
 * @param days how many are shown, today with them; at least 1
 * @returns the answer, and what it was told from
 * @example planAhead(shop, context, 7, searching).answer.sessions[0]?.rows[0]
 */
export function planAhead(shop: Shop, context: NowContext, days: number, searching: Searching): Ahead {
  const facts = readShop(shop, context, horizonOf(days));
  const ahead = problemAhead(facts, [], aimedFor(days));
  const search = searching.begin(ahead.made, null);
  const standing = standingPlan(searching, shop, context, ahead.made, days);
  if (standing === null) searching.goOn(search);
  const base = standing === null ? asKept(ahead, search.found) : playedShop(ahead, standing, search.found);
  return { answer: answerOf(base, 0, days), base, toKeep: standing === null ? search.found.plan : null };
}

/**
 * The coming days under a what-if, and what it changes: the plan is made with and without it.
 *
 * @returns the answer, with the plan without the what-if; or what no bench session is long enough for, where pieces are
 * added that cannot be made at all
 */
export function planIf(
  shop: Shop,
  context: NowContext,
  days: number,
  whatIf: WhatIf,
  searching: Searching,
): Ahead | { readonly fitsNoSession: FitsNoSession } {
  const today = localTime(context.zone, context.now).date;
  const dues = whatIf.added.map(({ due }) => (due === null ? 0 : daysBetween(today, due) + 1));
  const horizon = horizonOf(Math.max(days, ...dues));
  const facts = readShop(shop, { ...context, hours: hoursIf(context.hours, whatIf) }, horizon);
  const added = addedIf(whatIf, context.zone);
  const long = fitsNoSession(facts, added);
  if (long !== null) return { fitsNoSession: long };
  const usual = problemAhead(readShop(shop, context, horizon), [], aimedFor(days));
  const other = problemAhead(facts, added, aimedFor(days));
  const standing = standingPlan(searching, shop, context, usual.made, days);
  const { base, toKeep, ...both } = searchBoth(usual, other, standing, days <= DAYS_KEPT, searching);
  const found = added.length > 0 ? checkedShop(other, both.found) : goneOnWith(usual.made, other, both);
  const answer = answerOf(found, added.length, days);
  const without = { pieces: answerOf(base, 0, days).pieces, score: base.score };
  const changes = comparePlans(without, { pieces: answer.pieces, score: found.score });
  return { answer: { ...answer, changes, whatIf }, base, toKeep };
}

/** Minutes looked at to show so many days. */
function horizonOf(days: number): Minutes {
  return Math.min(MOST_AHEAD, Math.max(LEAST_AHEAD, days + BEYOND_SHOWN)) * DAY;
}

/** Minutes for which the pieces of the aim are planned: never under a week, so that all plans of a week agree. */
function aimedFor(days: number): Minutes {
  return Math.max(DAYS_KEPT, days) * DAY;
}

/** What the plan kept has become; null: none is kept that still holds. */
function standingPlan(
  { kept }: Searching,
  shop: Shop,
  context: NowContext,
  made: ShopProblem,
  days: number,
): Plan | null {
  if (kept === null || days <= DAYS_KEPT) return kept === null ? null : playRow(kept, made);
  const week = problemAhead(readShop(shop, context, horizonOf(DAYS_KEPT)), [], aimedFor(DAYS_KEPT));
  return playRowOn(kept, week.made, made);
}

/**
 * Searches for the plan with and without a what-if, each begun with the order of the other, so that what differs comes
 * of the what-if and not of a search that happened to do better. The plan kept stands for the one without, as everything
 * else tells it, unless a better one is worth taking its place.
 *
 * @param standing what the plan kept has become
 * @param mayBeBetter false: it stands, whatever is found
 */
function searchBoth(
  usual: ProblemAhead,
  other: ProblemAhead,
  standing: Plan | null,
  mayBeBetter: boolean,
  { begin, goOn }: Searching,
) {
  const first = begin(usual.made, null);
  goOn(first);
  const search = begin(other.made, inOrderOf(first, usual.made, other.made));
  goOn(search);
  const again = begin(usual.made, inOrderOf(search, other.made, usual.made));
  const best = again.found.score.total < first.found.score.total ? again.found : first.found;
  const cost = standing === null ? Number.POSITIVE_INFINITY : scorePlan(usual.made.problem, standing).total;
  const isNew = standing === null || (mayBeBetter && best.score.total < cost * (1 - WORTH_IT));
  const base = isNew ? asKept(usual, best) : playedShop(usual, standing, best);
  return {
    base,
    toKeep: isNew ? best.plan : null,
    stands: isNew ? best.plan : standing,
    /** What could be gained without the what-if, too. */
    missed: isNew ? 0 : Math.max(0, cost - best.score.total),
    found: search.found,
  };
}

/**
 * The plan that stands gone on with under a what-if, so that one that touches nothing changes nothing; unless what was
 * found there breaks less of what is promised, or is better by what a plan must be to take the place of another.
 */
function goneOnWith(
  made: ShopProblem,
  other: ProblemAhead,
  { stands, missed, found }: Pick<ReturnType<typeof searchBoth>, "stands" | "missed" | "found">,
): SearchedShop {
  const plan = carryOn(stands, made, other.made);
  if (plan === null) return checkedShop(other, found);
  const { total, tardiness } = scorePlan(other.made.problem, plan);
  const isWorse = found.score.total < (total - missed) * (1 - WORTH_IT) || tardiness > found.score.tardiness;
  return isWorse ? checkedShop(other, found) : playedShop(other, plan, found);
}

/** The plan found for one problem, as far as its tasks are in the other too. */
function inOrderOf({ found }: Search, made: ShopProblem, other: ShopProblem): Plan {
  return warmPlan(startsOf(found.plan, made), other);
}

function answerOf(found: SearchedShop, asked: number, days: number): PlanAnswer {
  const { now, zone } = found.facts.context;
  const until = instantOf(zone, addDays(localTime(zone, now).date, days), 0);
  return {
    at: now,
    days,
    assumedHours: found.facts.assumedHours,
    quality: found.quality,
    sessions: plannedSessions(found, until),
    pieces: pieceForecasts(found, asked, until),
    changes: null,
    whatIf: null,
  };
}

/** The first step of pieces added that no bench session is long enough for; null: all fit. */
function fitsNoSession(facts: ShopFacts, added: readonly AddedPiece[]): FitsNoSession | null {
  const { problem, pieces } = makeProblem({ ...facts, pieces: [] }, false, added);
  for (const { process, tasks } of pieces) {
    for (const { task, step } of tasks) {
      const long = tooLong(problem, at(problem.tasks, task), step);
      if (long !== null) return { ...long, process };
    }
  }
  return null;
}

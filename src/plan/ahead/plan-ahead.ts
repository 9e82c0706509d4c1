import { addDays, daysBetween, instantOf, localTime } from "../../time/civil.ts";
import type { CivilDate, Instant, Minutes } from "../../time/instant.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { Plan } from "../plan.ts";
import type { NoTime, PlanAnswer } from "../plan-answer.ts";
import { rowOf, warmPlan } from "../plan-row.ts";
import { type NowContext, readShop } from "../plan-shop.ts";
import { comparePlans } from "./compare-plans.ts";
import { tooLong } from "./no-time.ts";
import { pieceForecasts } from "./piece-forecasts.ts";
import { plannedSessions } from "./planned-sessions.ts";
import type { PlannedShop } from "./planned-shop.ts";
import { type SearchedShop, type SearchFor, searchShop } from "./searched-shop.ts";
import { addedIf, hoursIf, type WhatIf } from "./what-if.ts";

/** What is asked of the coming days. */
export interface PlanAsk {
  /** How many are shown, today with them; at least 1. */
  readonly days: number;
  readonly whatIf: WhatIf | null;
}

/** The coming days, and the shop as planned without any what-if. */
export interface Ahead {
  readonly answer: PlanAnswer;
  readonly base: SearchedShop;
}

/** A process added by a what-if has a step that no bench session is long enough for. */
export type FitsNoSession = Extract<NoTime, { because: "too long" }> & { readonly process: string };

const DAY: Minutes = 24 * 60;
/** Days looked at: further than what is shown, so that a plan does not end in a rush; and not without end. */
const LEAST_AHEAD = 14;
const BEYOND_SHOWN = 7;
const MOST_AHEAD = 120;

/**
 * The coming days: what to work when, and when each piece is finished. With a what-if the plan is made twice, with and
 * without it, and what it changes is told.
 *
 * @example planAhead(shop, context, { days: 7, whatIf: null }, search).answer.sessions[0]?.rows[0]
 */
export function planAhead(
  shop: Parameters<typeof readShop>[0],
  context: NowContext,
  { days, whatIf }: PlanAsk,
  search: SearchFor,
): Ahead | { readonly fitsNoSession: FitsNoSession } {
  const { now, zone } = context;
  const today = localTime(zone, now).date;
  const until = instantOf(zone, addDays(today, days), 0);
  const furthest = Math.max(days, ...(whatIf?.added ?? []).map(({ due }) => daysTo(due, today)));
  const horizon = Math.min(MOST_AHEAD, Math.max(LEAST_AHEAD, furthest + BEYOND_SHOWN)) * DAY;
  const shown = Math.max(BEYOND_SHOWN, days) * DAY;
  const usual = readShop(shop, context, horizon);
  const base = searchShop(usual, [], shown, (made) => search(made, null));
  if (whatIf === null) return { answer: answerOf(base, 0, days, until), base };

  const facts = readShop(shop, { ...context, hours: hoursIf(context.hours, whatIf) }, horizon);
  const added = addedIf(whatIf, zone);
  const withIt = searchShop(facts, added, shown, (made) => search(made, seedFrom(base, made)));
  const long = fitsNoSession(withIt, facts.pieces.length, added.length);
  if (long !== null) return { fitsNoSession: long };
  const asked = answerOf(withIt, added.length, days, until);
  const changes = comparePlans(
    { pieces: pieceForecasts(base, 0, until), score: base.score },
    { pieces: asked.pieces, score: withIt.score },
  );
  return { answer: { ...asked, changes, whatIf }, base };
}

/** The plan of the shop without a what-if, as far as its tasks are in the other problem too. */
function seedFrom({ plan, made }: SearchedShop, other: ShopProblem): Plan {
  return warmPlan(rowOf(plan, made, { seq: 0, settings: "", air: 0, seed: 0, rounds: 0 }), other);
}

function daysTo(date: CivilDate | null, today: CivilDate): number {
  return date === null ? 0 : daysBetween(today, date) + 1;
}

function answerOf(found: SearchedShop, asked: number, days: number, until: Instant): PlanAnswer {
  return {
    at: found.facts.context.now,
    days,
    assumedHours: found.facts.assumedHours,
    quality: found.quality,
    sessions: plannedSessions(found, until),
    pieces: pieceForecasts(found, asked, until),
    changes: null,
    whatIf: null,
  };
}

/** The first step of the pieces added that no bench session is long enough for; null: all fit. */
function fitsNoSession(shop: PlannedShop, first: number, count: number): FitsNoSession | null {
  for (const { process, tasks } of shop.made.pieces.slice(first, first + count)) {
    for (const made of tasks) {
      const task = shop.made.problem.tasks[made.task];
      const long = task === undefined ? null : tooLong(shop, made, task);
      if (long?.because === "too long") return { ...long, process };
    }
  }
  return null;
}

import type { Problem } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";
import { atOnce } from "./planned.ts";
import type { WorkNoise } from "./work-noise.ts";
import { openMinutes, playStream, type Span } from "./year.ts";

const WEEK: Minutes = 7 * 1440;

/** How many a week no way of working can pass in the long run; the lesser of the two holds. */
export interface Ceiling {
  /** Bench hours over the hands-on of a piece, set-ups not counted. */
  readonly byHours: number;
  /** How many are out, times what one after the other give that each have the shop to themselves. */
  readonly byTimeOut: number;
}

/**
 * The ceiling of a shop for the piece that stands first in it. A place among those that are out can give no more than
 * if it were alone: done as soon as it can be, with all that it needs set up, and the next begun at once.
 *
 * @param lucks how work may go: one alone is played under each, and the mean counts
 * @param span as much of the shop's sessions as is to count; some weeks, so that weekends count as they fall
 * @example 35 min of hands-on, three hours each evening, a day from one to the next: with two out 36 and 14 a week
 */
export function findCeiling(shop: Problem, out: number, lucks: readonly WorkNoise[], span: Span): Ceiling {
  const hands = shop.tasks.reduce((sum, { piece, minutes }) => (piece === 0 ? sum + minutes : sum), 0);
  const ready = { ...shop, setUps: shop.setUps.map((setUp) => ({ ...setUp, minutes: 0, putAway: 0 })) };
  const alone = lucks.map((luck) => playStream({ shop: ready, out: 1, ahead: 1 }, atOnce(), luck, span));
  const pace = alone.reduce((sum, { finishedPerWeek }) => sum + finishedPerWeek, 0) / lucks.length;
  return {
    byHours: (openMinutes(shop, span) / hands) * (WEEK / (span.until - span.from)),
    byTimeOut: out * pace,
  };
}

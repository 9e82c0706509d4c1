import { dispatch } from "../plan/dispatch.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Problem } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";
import { beginPlay } from "./play-state.ts";
import { problemNow } from "./problem-now.ts";
import { openMinutes } from "./year.ts";

const WEEK: Minutes = 7 * 1440;

/** Minutes between two beginnings that are tried for the shortest time out. */
const EVERY: Minutes = 5;

/** How many a week no way of working can pass, if all goes as thought; the lesser of the two holds. */
export interface Ceiling {
  /** Bench hours of a week over the hands-on of a piece, set-ups not counted. */
  readonly byHours: number;
  /** How many are out over the shortest time that one alone is out (Little's law). */
  readonly byTimeOut: number;
}

/** The ceiling of a shop (of whose second week the hours are taken) for the piece that stands first in it. */
export function findCeiling(shop: Problem, out: number): Ceiling {
  const hands = shop.tasks.reduce((sum, { piece, minutes }) => (piece === 0 ? sum + minutes : sum), 0);
  return {
    byHours: openMinutes(shop, { from: WEEK, until: 2 * WEEK }) / hands,
    byTimeOut: (out * WEEK) / shortestTimeOut(shop),
  };
}

/**
 * The shortest time from first hands-on to finish of a piece that has the shop to itself, over all beginnings in a
 * week. Each is played by dispatch, which does everything as soon as it can be done.
 *
 * @example a piece of 10 min, a wait of 60 and 20 more, in evenings of three hours: 90
 */
export function shortestTimeOut(shop: Problem): Minutes {
  const state = beginPlay({ ...shop, mostOut: null });
  let shortest = Number.POSITIVE_INFINITY;
  for (const { opens, closes } of shop.sessions.filter((session) => session.opens < WEEK)) {
    for (let begin = Math.max(0, opens); begin < closes; begin += EVERY) {
      while ((shop.sessions[state.session]?.closes ?? Infinity) <= begin) state.session++;
      state.now = begin;
      const { visits, finish } = dispatch(prepareDispatch(problemNow(state).problem));
      const first = visits[0];
      if (first === undefined || finish[0] === null || finish[0] === undefined) continue;
      shortest = Math.min(shortest, finish[0] - (first.start - first.setUp));
    }
  }
  return shortest;
}

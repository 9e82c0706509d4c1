import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { Problem } from "../problem.ts";
import { type BenchRound, openMinutes } from "./bench-round.ts";
import { longestOf } from "./lags-of-day.ts";
import type { Impossible, Pace } from "./rotation-answer.ts";

const DAY: Minutes = 1_440;

/**
 * The plainest reason why a pace is impossible: not enough bench time, or too few hooks; else that all together leaves
 * none, which proves nothing by itself.
 *
 * @param problem of one piece
 */
export function whyNot(problem: Problem, round: BenchRound, { pieces, days }: Pace): Impossible["why"] {
  const needed = leastWork(problem, pieces);
  const open = (openMinutes(round) * days * DAY) / round.minutes;
  if (needed > open * problem.hands) return { because: "hands", needed, open };
  const held = problem.places.map(() => 0);
  for (const { hook } of problem.tasks) {
    if (hook?.stays === true) held[hook.place] = at(held, hook.place) + longestOf(hook.until);
  }
  const full = problem.places.findIndex(({ hooks }, place) => at(held, place) * pieces > hooks * days * DAY);
  if (full < 0) return { because: "together" };
  const { name: place, hooks } = at(problem.places, full);
  return { because: "hooks", place, hooks };
}

/**
 * Bench time that so many pieces take at least: hands-on, looks, and for each station with set-ups one of each and one
 * putting away, for they may be shared.
 */
export function leastWork({ tasks, setUps }: Problem, pieces: number): Minutes {
  const used = setUps.filter((_, number) => tasks.some(({ setUp }) => setUp === number));
  const shared = used.filter(({ station, putAway }) => {
    return putAway > 0 || used.filter((other) => other.station === station).length > 1;
  });
  const made = shared.reduce((sum, { minutes }) => sum + minutes, 0);
  const stations = new Map<number, Minutes>();
  for (const { station, putAway } of used) {
    stations.set(station, Math.min(stations.get(station) ?? putAway, putAway));
  }
  const away = [...stations.values()].reduce((sum, minutes) => sum + minutes, 0);
  return made + away + pieces * tasks.reduce((sum, { minutes, looks }) => sum + minutes + looks.length, 0);
}

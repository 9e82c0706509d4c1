import type { Minutes } from "../../../time/instant.ts";
import { firstFit } from "../../fit-minutes.ts";
import { mod } from "./mod.ts";
import type { Route } from "./route.ts";
import { TailSpace } from "./space.ts";
import { type Tail, tailsOf } from "./tails.ts";

/** Steps of the prices; each costs one way through the row. */
const STEPS = 30;
/** The first step, in minutes of span for a minute of work; it shrinks to nothing. */
const STRIDE = 2;

/**
 * A sum of spans that no pattern of so many pieces goes below: the Lagrangian bound in which the hands of each session
 * have a price (Fisher, The Lagrangian relaxation method for solving integer programming problems, Management Science
 * 27(1), 1981). At any prices every piece costs at least what the cheapest way through the row costs alone, and the
 * hours that are sold are paid back; the prices rise where a way wants more than there is.
 */
export function leastSpansOf(route: Route, pieces: number): Minutes {
  const { circle, time } = route;
  const room = time.spans.map(({ opens, closes }) => (closes - opens) * circle.hands);
  const prices = room.map(() => 0);
  const works = circle.tasks.map((_, task) => workOf(route, task));
  const out = Float64Array.from({ length: circle.period + 1 }, (_, minute) => minute);
  const fits = circle.tasks.map((_, task) => freely(route, task));
  const costs = circle.tasks.map(() => new Float64Array(time.size));
  const space = new TailSpace(route);
  let best = 0;
  for (let step = 0; step < STEPS; step++) {
    for (const [task, own] of costs.entries()) {
      const free = fits[task] as Float64Array;
      const work = works[task] as number;
      for (let slot = 0; slot < own.length; slot++) {
        own[slot] = (free[slot] as number) + work * (prices[time.sessionOf[slot] as number] as number);
      }
    }
    const tails = tailsOf({ route, costs, out, space });
    const least = Math.min(...(tails[0]?.least ?? []));
    if (least === Number.POSITIVE_INFINITY) return best;
    const beside =
      route.beside.flat().reduce((sum, task) => sum + (works[task] as number), 0) * Math.min(...prices);
    const sold = prices.reduce((sum, price, session) => sum + price * (room[session] as number), 0);
    best = Math.max(best, pieces * (least + beside) - sold);
    const wanted = workBySession(route, tails);
    if (step === 0 && wanted.every((minutes, session) => pieces * minutes <= (room[session] as number)))
      break;
    for (const [session, minutes] of wanted.entries()) {
      const over = pieces * minutes - (room[session] as number);
      const stride = (STRIDE * (1 - step / STEPS)) / (room[session] as number);
      prices[session] = Math.max(0, (prices[session] as number) + stride * over);
    }
  }
  return Math.ceil(best - 1e-6);
}

/** Hands-on of a task with its looks. */
function workOf({ circle, looks }: Route, task: number): Minutes {
  const own = [task, ...(looks[task] ?? []).map((look) => look.task)];
  return own.reduce((sum, one) => sum + (circle.tasks[one]?.minutes ?? 0), 0);
}

/** By slot, 0 where a task can start at all, in fit air and its set-up standing; else Infinity. */
export function freely(route: Route, task: number): Float64Array {
  const { circle, time, lasts } = route;
  const costs = new Float64Array(time.size).fill(Number.POSITIVE_INFINITY);
  const { minutes = 0, unfit = [], setUp = null } = circle.tasks[task] ?? {};
  const { putAway = 0 } = circle.setUps[setUp ?? -1] ?? {};
  for (const { opens, closes } of time.spans) {
    const latest = closes - putAway - (lasts[task] as number);
    for (let slot = opens; slot <= latest; slot++) {
      const minute = time.minuteOf[slot] as number;
      if (firstFit(unfit, minutes, minute) === minute) costs[slot] = 0;
    }
  }
  return costs;
}

/** By session, the work that the cheapest way through the row has there. */
function workBySession(route: Route, tails: readonly Tail[]): number[] {
  const { row, time, circle } = route;
  const { period } = circle;
  const wanted = time.spans.map(() => 0);
  const first = (tails[0] as Tail).least;
  let slot = first.indexOf(Math.min(...first));
  for (const [place, task] of row.entries()) {
    const session = time.sessionOf[slot] as number;
    wanted[session] = (wanted[session] as number) + workOf(route, task);
    const tail = tails[place + 1];
    const spans = route.spans[place];
    if (tail === undefined || spans === undefined) break;
    const before = time.minuteOf[slot] as number;
    let least = Number.POSITIVE_INFINITY;
    for (const open of tail.open) {
      const left = tail.least[open] as number;
      if (left >= least) continue;
      const minute = time.minuteOf[open] as number;
      for (const [low, high] of spans) {
        const waited = low + mod(minute - before - low, period);
        const cost = waited + left;
        if (waited > high || cost >= least) continue;
        least = cost;
        slot = open;
      }
    }
  }
  return wanted;
}

import type { Minutes } from "../../../time/instant.ts";
import type { Chance } from "../../chance.ts";
import type { ApartTables } from "./apart-tables.ts";
import { type FreeMinutes, freeMinutes, NEVER } from "./free-minutes.ts";
import type { Harms } from "./harm.ts";
import { mod } from "./mod.ts";
import type { Occupied } from "./occupied.ts";
import type { Placed } from "./placed.ts";
import { Placing } from "./placing-piece.ts";
import type { Route } from "./route.ts";
import type { Space } from "./space.ts";
import { type Tail, tailsOf } from "./tails.ts";

export interface InsertAsk {
  readonly occupied: Occupied;
  readonly tables: ApartTables;
  readonly harms: Harms;
  readonly space: Space;
  readonly prices: Prices;
  readonly chance: Chance;
}

/** What is counted against a minute of being out. */
interface Prices {
  /** How many may be out at once, and what a minute with one more counts besides. */
  readonly out: number;
  readonly over: number;
  /** A minute of set-up. */
  readonly setUp: number;
  /** A minute that one of the tasks of further pieces loses by what is left in the air. */
  readonly harm: number;
  /** Sessions are as good to begin in as others that cost so many minutes more. */
  readonly blur: Minutes;
}

/** Beginnings tried before a piece is given up. */
const BEGINNINGS = 6;
/** Tasks placed at the most for one beginning. */
const STEPS = 60;
/** Starts looked at the most for one beginning. */
const LOOKS = 1_500;
/** Ways tried from each task on. */
const WAYS = 3;
/** Two ways that differ by less are one. */
const ALIKE: Minutes = 10;

/**
 * One piece more, on its least costly way between the others: the exact tails of its row (in which it is not in its own
 * way) lead a depth-first search through the minutes that are really free.
 *
 * @returns null: none was found
 */
export function insertPiece(ask: InsertAsk): Placed | null {
  const { occupied, tables, space, prices, chance } = ask;
  const { route } = occupied;
  const { time } = route;
  const free = freeMinutes(occupied, tables, space);
  const costs = priced(free, ask);
  const out = occupied.outCosts(prices.out, prices.over);
  const tails = tailsOf({ route, costs, out, space: space.tails });
  const first = (tails[0] as Tail).least.slice();
  for (const { opens, closes } of time.spans) {
    const more = prices.blur * chance();
    for (let slot = opens; slot < closes; slot++) (first[slot] as number) += more;
  }
  for (let beginning = 0; beginning < BEGINNINGS; beginning++) {
    const slot = leastOf(first);
    if (slot === null) return null;
    const placing = new Placing(occupied, free, tables);
    const descent = new Descent({ placing, tails, out });
    if (descent.from(time.minuteOf[slot] as number)) {
      const placed = placing.finish();
      if (placed !== null) return placed;
    }
    first.fill(Number.POSITIVE_INFINITY, Math.max(0, slot - ALIKE), slot + ALIKE);
  }
  return null;
}

function priced(free: FreeMinutes, { harms, prices, space: { costs } }: InsertAsk): readonly Float64Array[] {
  const harm = prices.harm === 0 ? null : harms.of(free, prices.harm);
  for (const [task, own] of costs.entries()) {
    const setUps = free.setUps[task] as Int16Array;
    for (let slot = 0; slot < own.length; slot++) {
      const head = setUps[slot] as number;
      own[slot] = head === NEVER ? Number.POSITIVE_INFINITY : head * prices.setUp;
    }
    const more = harm?.[task];
    if (more === undefined) continue;
    for (let slot = 0; slot < own.length; slot++) (own[slot] as number) += more[slot] as number;
  }
  return costs;
}

function leastOf(costs: Float64Array): number | null {
  let best = 0;
  for (let slot = 1; slot < costs.length; slot++)
    if ((costs[slot] as number) < (costs[best] as number)) best = slot;
  return costs[best] === Number.POSITIVE_INFINITY ? null : best;
}

interface Ways {
  readonly placing: Placing;
  readonly tails: readonly Tail[];
  readonly out: Float64Array;
}

/** Goes down the row, the least costly way first. */
class Descent {
  readonly #ways: Ways;
  #steps = 0;
  #looks = 0;

  constructor(ways: Ways) {
    this.#ways = ways;
  }

  from(start: Minutes): boolean {
    const { placing } = this.#ways;
    const first = placing.route.row[0] as number;
    const made = placing.canStart(first, start);
    return made !== null && this.#go(0, start, made);
  }

  #next(place: number, before: Minutes): boolean {
    const { placing } = this.#ways;
    const task = placing.route.row[place];
    if (task === undefined) return true;
    const tried: Minutes[] = [];
    for (let way = 0; way < WAYS && this.#steps < STEPS; way++) {
      const start = this.#cheapest(place, before, tried);
      const made = start === null ? null : placing.canStart(task, start);
      if (start === null || made === null) return false;
      this.#steps++;
      if (this.#go(place, start, made)) return true;
      tried.push(start);
    }
    return false;
  }

  /** Puts a task of the row with what is done beside it, and goes on from there; where that ends, takes all back. */
  #go(place: number, start: Minutes, made: boolean): boolean {
    const { placing } = this.#ways;
    placing.put(placing.route.row[place] as number, start, made);
    const beside = placing.route.beside[place] as readonly number[];
    const put = beside.findIndex((task) => !placing.putLatest(task));
    if (put < 0 && this.#next(place + 1, start)) return true;
    for (let count = put < 0 ? beside.length : put; count >= 0; count--) placing.takeBack();
    return false;
  }

  /** The start of a task at which it and all after it cost least, none of those tried or near them; null: there is none. */
  #cheapest(place: number, before: Minutes, tried: readonly Minutes[]): Minutes | null {
    const { placing, tails, out } = this.#ways;
    const { route, period } = placing;
    const { row, time } = route;
    const task = row[place] as number;
    const { least: tail, open, best: shortest } = tails[place] as Tail;
    let best: Minutes | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const [low, high] of route.spans[place - 1] as Route["spans"][number]) {
      const begin = mod(before + low, period);
      let turn = before + low - begin;
      let index = firstFrom(open, time.slotsBefore[begin] as number);
      for (let count = 0; count < open.length; count++, index++) {
        if (index === open.length) {
          index = 0;
          turn += period;
        }
        const slot = open[index] as number;
        const minute = time.minuteOf[slot] as number;
        const start = turn + minute;
        if (start > before + high) break;
        const since = (turn / period) * (out[period] as number) + (out[minute] as number);
        // Later starts are only dearer.
        if (since + shortest >= least) break;
        const cost = since + (tail[slot] as number);
        if (cost >= least || tried.some((other) => Math.abs(other - start) < ALIKE)) continue;
        if (this.#looks++ > LOOKS) return null;
        if (placing.canStart(task, start) === null) continue;
        least = cost;
        best = start;
      }
    }
    return best;
  }
}

/** The place of the first slot from one on. */
function firstFrom(open: Int32Array, slot: number): number {
  let low = 0;
  let high = open.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((open[middle] as number) < slot) low = middle + 1;
    else high = middle;
  }
  return low;
}

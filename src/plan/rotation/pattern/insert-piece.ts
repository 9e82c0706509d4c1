import type { Minutes } from "../../../time/instant.ts";
import type { Chance } from "../../chance.ts";
import { type ApartTables, type FreeMinutes, freeMinutes, harmOf, NEVER } from "./free-minutes.ts";
import { mod } from "./mod.ts";
import type { Occupied } from "./occupied.ts";
import type { Placed } from "./placed.ts";
import { Placing } from "./placing-piece.ts";
import { leastApart, spansOf, type Tail, tailsOf } from "./tails.ts";

export interface InsertAsk {
  readonly occupied: Occupied;
  readonly tables: ApartTables;
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
export function insertPiece({ occupied, tables, prices, chance }: InsertAsk): Placed | null {
  const { route } = occupied;
  const { time } = route;
  const free = freeMinutes(occupied, tables);
  const costs = priced(free, occupied, tables, prices);
  const out = occupied.outCosts(prices.out, prices.over);
  const tails = tailsOf({ route, costs, out });
  const first = Float64Array.from(tails[0]?.least ?? []);
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

function priced(free: FreeMinutes, { route }: Occupied, tables: ApartTables, prices: Prices): Float64Array[] {
  const harm = prices.harm === 0 ? null : harmOf(free, route, tables, prices.harm);
  return free.costs.map((own, task) => {
    const costs = new Float64Array(own.length);
    const more = harm?.[task];
    for (let slot = 0; slot < own.length; slot++) {
      const head = own[slot] as number;
      costs[slot] = head === NEVER ? Number.POSITIVE_INFINITY : head * prices.setUp + (more?.[slot] ?? 0);
    }
    return costs;
  });
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
    const { least: tail, open } = tails[place] as Tail;
    let best: Minutes | null = null;
    let least = Number.POSITIVE_INFINITY;
    const lag = route.lags[place - 1] as (typeof route.lags)[number];
    for (const [low, high] of spansOf(lag, leastApart(route, row, place - 1), period)) {
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
        const cost =
          (turn / period) * (out[period] as number) + (out[minute] as number) + (tail[slot] as number);
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

import type { Minutes } from "../../../time/instant.ts";
import type { Route } from "./route.ts";
import type { TailSpace } from "./space.ts";

/** What is asked of the way of one piece through its row. */
export interface TailsAsk {
  readonly route: Route;
  /** By task and slot: what starting it there costs; Infinity: it cannot. */
  readonly costs: readonly Float64Array[];
  /** By minute (and the end of the last): what it costs to be out from minute 0 to then. */
  readonly out: Float64Array;
  /** Where the tails stand; good until it is used again. */
  readonly space: TailSpace;
}

/** What is left of the way from one place of the row on. */
export interface Tail {
  /** By slot; Infinity: no way leads to the end. */
  readonly least: Float64Array;
  /** The slots from which one does, in order. */
  readonly open: Int32Array;
  /** The least of all; Infinity: there is none. */
  readonly best: number;
}

/**
 * By place in the row and slot: the least cost (to be out from there to the end of the row, and of each start on the way)
 * once the task starts there. By dynamic programming from the end, with the least of
 * each sliding window kept in a queue: what the piece did before does not matter.
 *
 * What tasks of one piece do to each other beyond neighbours in the row is left out, so nothing costs less.
 */
export function tailsOf({ route, costs, out, space }: TailsAsk): Tail[] {
  const { circle, row, time } = route;
  const { leasts } = space;
  for (const least of leasts) least.fill(Number.POSITIVE_INFINITY);
  const last = row.length - 1;
  const minutes = circle.tasks[row[last] as number]?.minutes ?? 0;
  const end = leasts[last] as Float64Array;
  for (let slot = 0; slot < time.size; slot++) {
    const minute = time.minuteOf[slot] as number;
    const own = (costs[row[last] as number] as Float64Array)[slot] as number;
    end[slot] = own + (out[minute + minutes] as number) - (out[minute] as number);
  }
  const tails: Tail[] = [];
  for (let place = last; place >= 0; place--) {
    const own = costs[row[place] as number] as Float64Array;
    const next = tails[place + 1];
    const least = leasts[place] as Float64Array;
    for (const [from, until] of next === undefined ? [] : (route.spans[place] as Route["spans"][number])) {
      const sliding = { least: from, most: until, out, route, space };
      const way = until - from < circle.period - 1 ? lessenWithin : lessenFrom;
      if (next !== undefined && next.open.length > 0) way(least, own, next.least, next.open, sliding);
    }
    tails[place] = tailOf(least, space.opens[place] as Int32Array);
  }
  return tails;
}

function tailOf(least: Float64Array, open: Int32Array): Tail {
  let count = 0;
  let best = Number.POSITIVE_INFINITY;
  for (let slot = 0; slot < least.length; slot++) {
    const left = least[slot] as number;
    if (left === Number.POSITIVE_INFINITY) continue;
    open[count++] = slot;
    if (left < best) best = left;
  }
  return { least, open: open.subarray(0, count), best };
}

interface Sliding {
  readonly least: Minutes;
  readonly most: Minutes;
  readonly out: Float64Array;
  readonly route: Route;
  readonly space: TailSpace;
}

/** For a wait that never shuts: the least of all that is left from its opening on. */
function lessenFrom(
  tail: Float64Array,
  own: Float64Array,
  after: Float64Array,
  free: Int32Array,
  { least, out, route: { time }, space: { lefts } }: Sliding,
): void {
  const { minuteOf, period } = time;
  const round = out[period] as number;
  lefts[free.length] = Number.POSITIVE_INFINITY;
  for (let index = free.length - 1; index >= 0; index--) {
    const slot = free[index] as number;
    const left = (after[slot] as number) + (out[minuteOf[slot] as number] as number);
    lefts[index] = Math.min(left, lefts[index + 1] as number);
  }
  const inNext = (lefts[0] as number) + round;
  let next = 0;
  let turn = 0;
  for (let slot = 0; slot < time.size; slot++) {
    if (own[slot] === Number.POSITIVE_INFINITY) continue;
    const minute = minuteOf[slot] as number;
    const opens = minute + least;
    while (opens >= (turn + 1) * period) {
      turn++;
      next = 0;
    }
    while (next < free.length && (minuteOf[free[next] as number] as number) < opens - turn * period) next++;
    const left = Math.min(lefts[next] as number, inNext) + turn * round;
    const cost = left - (out[minute] as number) + (own[slot] as number);
    if (cost < (tail[slot] as number)) tail[slot] = cost;
  }
}

/** For a wait that shuts: the least of each window, kept in a queue as it slides on. */
function lessenWithin(
  tail: Float64Array,
  own: Float64Array,
  after: Float64Array,
  free: Int32Array,
  { least, most, out, route: { time }, space: { ends, lefts, queue } }: Sliding,
): void {
  const count = free.length;
  const { minuteOf, period } = time;
  const round = out[period] as number;
  // The free slots of two turns on end: where the wait ends, and what is left from there.
  const turns = Math.floor(least / period);
  for (let index = 0; index < 3 * count; index++) {
    const turn = turns + Math.floor(index / count);
    const slot = free[index % count] as number;
    const minute = minuteOf[slot] as number;
    ends[index] = minute + turn * period;
    lefts[index] = (after[slot] as number) + (out[minute] as number) + turn * round;
  }
  let head = 0;
  let length = 0;
  let next = 0;
  for (let slot = 0; slot < time.size; slot++) {
    if (own[slot] === Number.POSITIVE_INFINITY) continue;
    const minute = minuteOf[slot] as number;
    const from = minute + least;
    const until = minute + most;
    while (next < 3 * count && (ends[next] as number) < from) next++;
    for (; next < 3 * count && (ends[next] as number) <= until; next++) {
      const left = lefts[next] as number;
      while (length > head && (lefts[queue[length - 1] as number] as number) >= left) length--;
      queue[length++] = next;
    }
    while (head < length && (ends[queue[head] as number] as number) < from) head++;
    if (head === length) continue;
    const cost = (lefts[queue[head] as number] as number) - (out[minute] as number) + (own[slot] as number);
    if (cost < (tail[slot] as number)) tail[slot] = cost;
  }
}

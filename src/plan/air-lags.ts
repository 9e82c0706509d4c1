import type { Coat } from "../process/coat.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { ALIKE_AFTER, type ShopFacts } from "./plan-shop.ts";
import type { Lag, LagTable } from "./problem.ts";

/** How close together the beginnings of a wait are looked at where the air changes. */
const EVERY: Minutes = 15;

/** So many entries on, the air of each day is as that of the day before, and waits last as long. */
const ALIKE_FROM = ALIKE_AFTER / EVERY;
const DAY = (24 * 60) / EVERY;

/** The lags of a coat by the minutes of its sheet: in known air tables, else the minutes themselves. */
export interface LagsOfCoat {
  /** When something opens, `least` minutes by the clock after the coat at the earliest. */
  readonly opens: (minutes: Minutes, least: Minutes) => Lag;
  /** The last whole minute before something shuts. */
  readonly shuts: (minutes: Minutes) => Lag;
}

/** How coats that are hung at a place will dry there. */
export interface AirThere {
  /** Whether a coat dries as fast at every moment from now on. */
  readonly isSteady: (coat: Coat) => boolean;
  /** When a coat hung at each of these moments, which rise, has come so many minutes by its sheet; Infinity: never. */
  readonly reachEach: (coat: Coat, minutes: Minutes, moments: readonly Instant[]) => readonly Instant[];
}

/** Minutes pass as the sheet says. */
export const asSaid: LagsOfCoat = {
  opens: (minutes, least) => Math.ceil(Math.max(minutes, least)),
  shuts: (minutes) => lastBefore(minutes),
};

/** The lags of a coat that will hang at a place. Pieces that wear the same coat share what was reckoned once. */
export function lagsIn(facts: ShopFacts, coat: Coat | null, place: string | null): LagsOfCoat {
  if (coat === null) return asSaid;
  const byPlace = facts.lags.get(coat) ?? new Map<string | null, LagsOfCoat>();
  facts.lags.set(coat, byPlace);
  const known = byPlace.get(place) ?? makeLags(facts, coat, place);
  byPlace.set(place, known);
  return known;
}

function makeLags({ context, horizon, airAt }: ShopFacts, coat: Coat, place: string | null): LagsOfCoat {
  const air = airAt(place ?? "");
  if (air === null) return asSaid;
  const { now } = context;
  const isSteady = air.isSteady(coat);
  const made = new Map<string, Lag>();
  /** @param end when a wait that began at a minute ends, for one whose coat has come that far at another */
  const once = (key: string, minutes: Minutes, end: (reached: Minutes, begun: Minutes) => Minutes): Lag => {
    const endsOf = (entries: readonly number[]) => {
      const moments = entries.map((entry) => after(now, entry * EVERY));
      const reached = air.reachEach(coat, minutes, moments);
      return entries.map((entry, index) => end(((reached[index] as Instant) - now) / MINUTE, entry * EVERY));
    };
    const lag = made.get(key) ?? makeLag(endsOf, horizon, isSteady);
    made.set(key, lag);
    return lag;
  };
  return {
    opens: (minutes, least) =>
      minutes === 0
        ? Math.ceil(least)
        : once(`opens ${minutes} ${least}`, minutes, (reached, begun) =>
            Math.ceil(Math.max(reached, begun + least)),
          ),
    shuts: (minutes) => once(`shuts ${minutes}`, minutes, lastBefore),
  };
}

/** When waits begun at some entries of a table, which rise, end; Infinity: never. */
type EndsOf = (entries: readonly number[]) => readonly Minutes[];

function makeLag(endsOf: EndsOf, horizon: Minutes, isSteady: boolean): Lag {
  if (isSteady) {
    const [lag = 0] = endsOf([0]);
    if (Number.isFinite(lag)) return lag;
  }
  return new LagInAir(endsOf, Math.ceil(horizon / EVERY) + 1);
}

/**
 * A table whose entries are reckoned when they are asked for: what is worked now asks for few, a search for all. A copy of it,
 * as for another thread, is the plain table.
 */
class LagInAir implements LagTable {
  readonly every = EVERY;
  declare readonly reached: LagTable["reached"];
  readonly #endsOf: EndsOf;
  readonly #known: (Minutes | null | undefined)[];
  #all: LagTable["reached"] | null = null;

  constructor(endsOf: EndsOf, entries: number) {
    this.#endsOf = endsOf;
    this.#known = new Array(entries);
    // An own property: those of a class are not copied.
    Object.defineProperty(this, "reached", { enumerable: true, get: () => this.#reckonAll() });
  }

  endAt(entry: number): Minutes | null {
    if (entry >= this.#known.length) return null;
    let end = this.#known[entry];
    if (end === undefined) {
      end = this.#reckon(entry);
      this.#known[entry] = end;
    }
    return end;
  }

  #reckon(entry: number): Minutes | null {
    const days = daysBeyond(entry);
    const [end = 0] = this.#endsOf([entry - days * DAY]);
    return orNull(days === 0 ? end : goneOn(end, this.#lastReckoned(), days));
  }

  #reckonAll(): LagTable["reached"] {
    if (this.#all !== null) return this.#all;
    const count = Math.min(this.#known.length, ALIKE_FROM + DAY);
    const ends = this.#endsOf(Array.from({ length: count }, (_, entry) => entry));
    const last = ends.at(-1) ?? 0;
    this.#all = Array.from(this.#known, (_, entry) => {
      const days = daysBeyond(entry);
      const end = ends[entry - days * DAY] ?? 0;
      return orNull(days === 0 ? end : goneOn(end, last, days));
    });
    return this.#all;
  }

  /** The end of the last of the days that are reckoned. */
  #lastReckoned(): Minutes {
    return this.endAt(ALIKE_FROM + DAY - 1) ?? Number.POSITIVE_INFINITY;
  }
}

/** How many days an entry lies after the days that are reckoned. */
const daysBeyond = (entry: number): number => Math.max(0, Math.ceil((entry + 1 - ALIKE_FROM) / DAY) - 1);

/**
 * When a wait begun days later ends than one that ends so, on days that are alike to a fraction of a minute: for that
 * fraction's sake never before one begun earlier.
 *
 * @param last the latest end on the days before
 */
const goneOn = (end: Minutes, last: Minutes, days: number): Minutes =>
  Math.max(end + DAY * EVERY, last) + (days - 1) * DAY * EVERY;

const orNull = (end: Minutes): Minutes | null => (end === Number.POSITIVE_INFINITY ? null : end);

/** The last whole minute before a moment that is too late. */
export function lastBefore(shuts: Minutes): Minutes {
  return Math.ceil(shuts) - 1;
}

import type { Coat } from "../process/coat.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { ALIKE_AFTER, type ShopFacts } from "./plan-shop.ts";
import type { Lag } from "./problem.ts";

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

/** When a coat hung at each of these moments, which rise, has come so many minutes by its sheet. */
export type ReachEach = (coat: Coat, minutes: Minutes, moments: readonly Instant[]) => readonly Instant[];

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

function makeLags({ context, horizon, reachEach }: ShopFacts, coat: Coat, place: string | null): LagsOfCoat {
  const reach = reachEach(place ?? "");
  if (reach === null) return asSaid;
  const { now } = context;
  const entries = Math.ceil(horizon / EVERY) + 1;
  const moments: Instant[] = [];
  for (let index = 0; index < Math.min(entries, ALIKE_FROM + DAY); index++)
    moments.push(after(now, index * EVERY));
  const [made, ends] = [new Map<string, Lag>(), new Map<Minutes, readonly Instant[]>()];
  const reachedIn = (minutes: Minutes): readonly Instant[] => {
    const reached = ends.get(minutes) ?? reach(coat, minutes, moments);
    ends.set(minutes, reached);
    return reached;
  };
  const once = (key: string, minutes: Minutes, end: (reached: Minutes, begun: Minutes) => Minutes): Lag => {
    let lag = made.get(key);
    if (lag === undefined) {
      lag = tableOf(
        reachedIn(minutes).map((at, index) => end((at - now) / MINUTE, index * EVERY)),
        entries,
      );
      made.set(key, lag);
    }
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

/**
 * When waits begun every quarter of an hour end, those of the first days known; where all last as long, that length alone.
 */
function tableOf(ends: readonly Minutes[], entries: number): Lag {
  const [first = 0] = ends;
  if (Number.isFinite(first) && ends.every((end, index) => end - index * EVERY === first)) return first;
  const reached = ends.map((end) => (end === Number.POSITIVE_INFINITY ? null : end));
  let last = ends[ends.length - 1] ?? first;
  for (let index = ends.length; index < entries; index++) {
    const theDayBefore = (reached[index - DAY] ?? Number.POSITIVE_INFINITY) + DAY * EVERY;
    // Never earlier than one begun earlier: the days are alike to a fraction of a minute.
    if (theDayBefore > last) last = theDayBefore;
    reached.push(last === Number.POSITIVE_INFINITY ? null : last);
  }
  return { every: EVERY, reached };
}

/** The last whole minute before a moment that is too late. */
export function lastBefore(shuts: Minutes): Minutes {
  return Math.ceil(shuts) - 1;
}

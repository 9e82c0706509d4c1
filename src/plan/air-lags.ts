import type { Coat } from "../process/coat.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { ShopFacts } from "./plan-shop.ts";
import type { Lag } from "./problem.ts";

/** How close together the beginnings of a wait are looked at where the air changes. */
const EVERY: Minutes = 15;

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
  const begun = Array.from({ length: Math.ceil(horizon / EVERY) + 1 }, (_, index) => index * EVERY);
  const moments = begun.map((minute) => after(now, minute));
  const made = new Map<string, Lag>();
  const once = (key: string, minutes: Minutes, end: (reached: Minutes, begun: Minutes) => Minutes): Lag => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const reached = reach(coat, minutes, moments);
    const lag = tableOf(reached.map((moment, index) => end((moment - now) / MINUTE, begun[index] ?? 0)));
    made.set(key, lag);
    return lag;
  };
  return {
    opens: (minutes, least) =>
      minutes === 0
        ? Math.ceil(least)
        : once(`opens ${minutes} ${least}`, minutes, (reached, from) =>
            Math.ceil(Math.max(reached, from + least)),
          ),
    shuts: (minutes) => once(`shuts ${minutes}`, minutes, lastBefore),
  };
}

/** When waits begun every quarter of an hour end; where all last as long, that length alone. */
function tableOf(ends: readonly Minutes[]): Lag {
  const [first = 0] = ends;
  if (Number.isFinite(first) && ends.every((minute, index) => minute - index * EVERY === first)) return first;
  return { every: EVERY, reached: ends.map((minute) => (Number.isFinite(minute) ? minute : null)) };
}

/** The last whole minute before a moment that is too late. */
export function lastBefore(shuts: Minutes): Minutes {
  return Math.ceil(shuts) - 1;
}

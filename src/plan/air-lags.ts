import type { Coat } from "../process/coat.ts";
import { after, MINUTE, type Minutes } from "../time/instant.ts";
import type { ShopFacts } from "./plan-shop.ts";
import type { Lag } from "./problem.ts";

/** How close together the beginnings of a wait are looked at where the air changes. */
const EVERY: Minutes = 60;

/** The lags of a coat by the minutes of its sheet: in known air tables, else the minutes themselves. */
export interface LagsOfCoat {
  /** When something opens, `least` minutes by the clock after the coat at the earliest. */
  readonly opens: (minutes: Minutes, least: Minutes) => Lag;
  /** The last whole minute before something shuts. */
  readonly shuts: (minutes: Minutes) => Lag;
}

/** Minutes pass as the sheet says. */
export const asSaid: LagsOfCoat = {
  opens: (minutes, least) => Math.ceil(Math.max(minutes, least)),
  shuts: (minutes) => lastBefore(minutes),
};

/** The lags of a coat that will hang at a place. */
export function lagsIn(
  { context, horizon, dryingAt }: ShopFacts,
  coat: Coat | null,
  place: string | null,
): LagsOfCoat {
  const drying = coat === null ? null : dryingAt(place ?? "");
  if (coat === null || drying === null) return asSaid;
  const { air, factor } = drying;
  const table = (end: (begun: Minutes) => Minutes): Lag => ({
    every: EVERY,
    reached: Array.from({ length: Math.ceil(horizon / EVERY) + 1 }, (_, index) => {
      const minute = end(index * EVERY);
      return Number.isFinite(minute) ? minute : null;
    }),
  });
  const reach = (begun: Minutes, minutes: Minutes): Minutes =>
    (air.reach(coat, after(context.now, begun), minutes * factor) - context.now) / MINUTE;
  return {
    opens: (minutes, least) =>
      minutes === 0
        ? Math.ceil(least)
        : table((begun) => Math.ceil(Math.max(reach(begun, minutes), begun + least))),
    shuts: (minutes) => table((begun) => lastBefore(reach(begun, minutes))),
  };
}

/** The last whole minute before a moment that is too late. */
export function lastBefore(shuts: Minutes): Minutes {
  return Math.ceil(shuts) - 1;
}

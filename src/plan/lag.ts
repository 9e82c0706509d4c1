import type { Minutes } from "../time/instant.ts";
import type { Lag, LagTable } from "./problem.ts";

/**
 * The minute at which a wait begun at `from` is over; Infinity: never within the table.
 *
 * @example openingAfter(240, 10) // → 250
 */
export function openingAfter(lag: Lag, from: Minutes): Minutes {
  if (typeof lag === "number") return from + lag;
  return endAt(lag, Math.max(0, Math.ceil(from / lag.every)));
}

/** The last minute of a window that shuts `lag` after `from`; Infinity: it never shuts. */
export function shutAfter(lag: Lag | null, from: Minutes): Minutes {
  if (lag === null) return Number.POSITIVE_INFINITY;
  if (typeof lag === "number") return from + lag;
  return endAt(lag, Math.max(0, Math.floor(from / lag.every)));
}

function endAt(lag: LagTable, entry: number): Minutes {
  const end = lag.endAt === undefined ? lag.reached[entry] : lag.endAt(entry);
  return end ?? Number.POSITIVE_INFINITY;
}

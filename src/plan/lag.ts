import type { Minutes } from "../time/instant.ts";
import type { Lag } from "./problem.ts";

/**
 * The minute at which a wait begun at `from` is over; Infinity: never within the table.
 *
 * @example openingAfter(240, 10) // → 250
 */
export function openingAfter(lag: Lag, from: Minutes): Minutes {
  if (typeof lag === "number") return from + lag;
  return lag.reached[Math.max(0, Math.ceil(from / lag.every))] ?? Number.POSITIVE_INFINITY;
}

/** The last minute of a window that shuts `lag` after `from`; Infinity: it never shuts. */
export function shutAfter(lag: Lag | null, from: Minutes): Minutes {
  if (lag === null) return Number.POSITIVE_INFINITY;
  if (typeof lag === "number") return from + lag;
  return lag.reached[Math.max(0, Math.floor(from / lag.every))] ?? Number.POSITIVE_INFINITY;
}

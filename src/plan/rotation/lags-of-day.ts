import type { Minutes } from "../../time/instant.ts";
import type { Lag } from "../problem.ts";

/**
 * A wait until something opens at its longest over the day; Infinity: begun at some hour it never ends. In a table it
 * may begin right after the entry before the one it ends by.
 */
export function longestOf(lag: Lag): Minutes {
  if (typeof lag === "number") return lag;
  const { every, reached } = lag;
  const waits = reached.map((ends, entry) => (ends ?? Infinity) - Math.max(0, (entry - 1) * every + 1));
  return Math.max(...waits);
}

/** A wait until something shuts at its shortest; in a table it may begin right before the entry after. */
export function shortestOf(lag: Lag): Minutes {
  if (typeof lag === "number") return lag;
  const { every, reached } = lag;
  return Math.min(...reached.map((ends, entry) => (ends ?? Infinity) - ((entry + 1) * every - 1)));
}

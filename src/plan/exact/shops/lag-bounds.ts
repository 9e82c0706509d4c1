import type { Minutes } from "../../../time/instant.ts";
import type { Lag } from "../../problem.ts";

/** The shortest a wait can be, whenever it begins; for air that changes, of the whole table. */
export function shortestLag(lag: Lag): Minutes {
  if (typeof lag === "number") return lag;
  const { every, reached } = lag;
  // A wait begun after the entry before ends at this one.
  const all = reached.flatMap((ends, entry) => (ends === null ? [] : [ends - entry * every]));
  return Math.max(0, Math.min(...all));
}

/** The longest a wait can be, whenever it begins; null: some never end within the table. */
export function longestLag(lag: Lag): Minutes | null {
  if (typeof lag === "number") return lag;
  const { every, reached } = lag;
  if (reached.includes(null)) return null;
  return Math.max(...reached.map((ends, entry) => (ends ?? 0) - entry * every));
}

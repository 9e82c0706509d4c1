import type { Pace } from "../plan/rotation/rotation-answer.ts";
import { sayCount } from "./say-list.ts";

/**
 * A pace in words.
 *
 * @example sayPace({ pieces: 1, days: 2 }) // "one every 2 days"
 * @example sayPace({ pieces: 5, days: 7 }) // "5 a week"
 */
export function sayPace({ pieces, days }: Pace): string {
  if (days === 1) return `${pieces} a day`;
  if (days === 7) return `${pieces} a week`;
  return `${pieces === 1 ? "one" : pieces} every ${days % 7 === 0 ? sayCount(days / 7, "week") : sayCount(days, "day")}`;
}

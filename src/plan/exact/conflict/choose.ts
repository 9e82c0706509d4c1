import type { Literal } from "./arcs.ts";
import type { Bounds } from "./bounds.ts";
import type { Way } from "./model.ts";

/** What may be decided: all variables, of which the first are times, and some say which way round two of these are. */
export interface Choice {
  readonly bounds: Bounds;
  readonly times: number;
  readonly ways: readonly Way[];
  /** By variable: 1 for those in `ways`. */
  readonly isWay: Uint8Array;
  /** By variable: how much it had to do with clashes lately. */
  readonly activity: Float64Array;
}

/**
 * In order of time: what can be earliest comes before all that get in its way, and then is put there.
 *
 * @returns null when all times are fixed
 */
export function chooseEarliest({ bounds, times, ways, activity }: Choice): Literal | null {
  let best = -1;
  let earliest = 0;
  for (let variable = 0; variable < times; variable++) {
    if (bounds.isFixed(variable)) continue;
    const time = bounds.now[2 * variable] as number;
    const isBetter =
      best < 0 ||
      time < earliest ||
      (time === earliest && (activity[variable] as number) > (activity[best] as number));
    if (!isBetter) continue;
    best = variable;
    earliest = time;
  }
  if (best < 0) return null;
  for (const { variable, one, other } of ways) {
    if ((one !== best && other !== best) || bounds.isFixed(variable)) continue;
    return one === best ? { side: 2 * variable, value: 1 } : { side: 2 * variable + 1, value: 0 };
  }
  return { side: 2 * best + 1, value: -earliest };
}

/**
 * What had most to do with clashes lately. A time is put where it was in the best schedule so far, as far as its
 * bounds allow, and a way round taken as it was; anything else, being a cost, is as low as it can be.
 *
 * @param best values of all variables in the best schedule; null: none yet
 */
export function chooseLiveliest(
  { bounds, times, isWay, activity }: Choice,
  best: Int32Array | null,
): Literal | null {
  let liveliest = -1;
  for (let variable = 0; variable < activity.length; variable++) {
    if (bounds.isFixed(variable)) continue;
    if (liveliest < 0 || (activity[variable] as number) > (activity[liveliest] as number)) {
      liveliest = variable;
    }
  }
  if (liveliest < 0) return null;
  const lower = bounds.now[2 * liveliest] as number;
  const upper = -(bounds.now[2 * liveliest + 1] as number);
  const asBefore = best !== null && (liveliest < times || isWay[liveliest] === 1);
  const wish = asBefore ? (best[liveliest] as number) : lower;
  return wish >= upper
    ? { side: 2 * liveliest, value: upper }
    : { side: 2 * liveliest + 1, value: -Math.max(wish, lower) };
}

import type { Minutes } from "../time/instant.ts";
import type { UnfitSpan } from "./problem.ts";

/**
 * The first start, from one on, at which no minute of some work lies in a stretch unfit for it.
 *
 * @param unfit in order and apart
 * @example firstFit([[0, 60]], 10, 55) // → 60
 */
export function firstFit(unfit: readonly UnfitSpan[], minutes: Minutes, from: Minutes): Minutes {
  let start = from;
  for (const [begins, ends] of unfit) if (begins < start + minutes && ends > start) start = ends;
  return start;
}

/** The last such start up to one. `lastFit([[100, 160]], 10, 95) === 90` */
export function lastFit(unfit: readonly UnfitSpan[], minutes: Minutes, until: Minutes): Minutes {
  let start = until;
  for (let index = unfit.length - 1; index >= 0; index--) {
    const [begins, ends] = unfit[index] as UnfitSpan;
    if (begins < start + minutes && ends > start) start = begins - minutes;
  }
  return start;
}

/** What the first day of a period says of unfit air, said of each day of it. */
export function eachDay(unfit: readonly UnfitSpan[], day: Minutes, period: Minutes): UnfitSpan[] {
  const first = unfit.flatMap(([from, until]): UnfitSpan[] =>
    from < day ? [[from, Math.min(until, day)]] : [],
  );
  const days = Math.ceil(period / day);
  return Array.from({ length: days }, (_, number) =>
    first.map(([from, until]): UnfitSpan => [from + number * day, until + number * day]),
  ).flat();
}

import type { Minutes } from "../../time/instant.ts";

/** Minutes as stretches in order, none touching the next: the first and the last minute of each by turns. */
export type Stretches = Minutes[];

/** Puts in one stretch more, that begins no sooner than the last one there. */
export function addStretch(to: Stretches, first: Minutes, last: Minutes): void {
  const end = to.length - 1;
  if (end < 0 || first > (to[end] as Minutes) + 1) to.push(first, last);
  else if (last > (to[end] as Minutes)) to[end] = last;
}

/** The minutes that are in both. */
export function meet(one: Stretches, other: Stretches): Stretches {
  const both: Stretches = [];
  let [i, j] = [0, 0];
  while (i < one.length && j < other.length) {
    const first = Math.max(one[i] as Minutes, other[j] as Minutes);
    const last = Math.min(one[i + 1] as Minutes, other[j + 1] as Minutes);
    if (first <= last) both.push(first, last);
    if ((one[i + 1] as Minutes) < (other[j + 1] as Minutes)) i += 2;
    else j += 2;
  }
  return both;
}

/** The minutes that are in either. */
export function join(one: Stretches, other: Stretches): Stretches {
  const either: Stretches = [];
  let [i, j] = [0, 0];
  while (i < one.length || j < other.length) {
    if (j >= other.length || (one[i] as Minutes) <= (other[j] as Minutes)) {
      addStretch(either, one[i] as Minutes, one[i + 1] as Minutes);
      i += 2;
    } else {
      addStretch(either, other[j] as Minutes, other[j + 1] as Minutes);
      j += 2;
    }
  }
  return either;
}

/** The latest of them from one minute to another; null: none. */
export function latestWithin(stretches: Stretches, first: Minutes, last: Minutes): Minutes | null {
  for (let i = stretches.length - 2; i >= 0; i -= 2) {
    const latest = Math.min(last, stretches[i + 1] as Minutes);
    if (latest >= Math.max(first, stretches[i] as Minutes)) return latest;
  }
  return null;
}

/** The earliest of them from one minute to another; null: none. */
export function earliestWithin(stretches: Stretches, first: Minutes, last: Minutes): Minutes | null {
  for (let i = 0; i < stretches.length; i += 2) {
    const earliest = Math.max(first, stretches[i] as Minutes);
    if (earliest <= Math.min(last, stretches[i + 1] as Minutes)) return earliest;
  }
  return null;
}

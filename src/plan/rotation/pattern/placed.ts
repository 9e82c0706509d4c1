import type { Minutes } from "../../../time/instant.ts";

/** One piece on the circle: where each of its tasks starts, counted on from the turn in which it is begun. */
export interface Placed {
  readonly starts: readonly Minutes[];
  /** By task, whether its set-up is made directly before it. */
  readonly made: readonly boolean[];
  /** Its first start, and the end of its last work. */
  readonly from: Minutes;
  readonly until: Minutes;
}

/** How many of such pieces are out at the most. */
export function mostOut(pieces: readonly Pick<Placed, "from" | "until">[], period: Minutes): number {
  return Math.max(0, ...pieces.map(({ from }) => outAt(pieces, from, period)));
}

/** How many are out at a moment, one copy of each begun every period. */
export function outAt(
  pieces: readonly Pick<Placed, "from" | "until">[],
  moment: Minutes,
  period: Minutes,
): number {
  return pieces.reduce((sum, { from, until }) => {
    return sum + Math.floor((moment - from) / period) - Math.floor((moment - until) / period);
  }, 0);
}

/**
 * What touch tests say of a coat, as how many times its sheet's minutes it needs: at least `least`, at most `most`.
 * Tacky at 3 h, by a sheet that gives 2 h to tack-free: at least 1.5. Hard at 9 h of 12 h: at most 0.75.
 */
export interface FactorSpan {
  /** 0: nothing found it slower than that. */
  readonly least: number;
  /** Infinity: nothing found it faster. */
  readonly most: number;
}

/** A learned factor is never beyond these: more is a fault of the mix or the air, and no property of the can. */
export const FACTOR_RANGE = { least: 0.5, most: 2 } as const;

/** How far a can usually is from its sheet, and one laying from another of the same can, as standard deviations of the logarithm. Our own, no source. */
const CAN_FROM_SHEET = 0.25;
const COAT_FROM_CAN = 0.15;

/**
 * The factor of one coat as it hangs: what was expected, moved only as far as a touch denies it. A touch that agrees
 * moves nothing, and none makes a coat quicker than its sheet: felt dry on the outside, it has vouched for that much.
 *
 * @example coatFactor(1, { least: 1.5, most: Infinity }) // 1.5: still tacky at one and a half times its sheet
 * @example coatFactor(1.4, { least: 0, most: 1.1 }) // 1.1: dry sooner than this can was known for
 */
export function coatFactor(expected: number, { least, most }: FactorSpan): number {
  if (isFault({ least })) return clampFactor(expected);
  return clampFactor(Math.max(least, Math.min(Math.max(1, most), expected)));
}

/** Tacky at more than twice its time: a fault of the mix, the film or the air. Waiting will not help, and no time is learned. */
export function isFault({ least }: Pick<FactorSpan, "least">): boolean {
  return least > FACTOR_RANGE.most;
}

/**
 * The factor of a coat over all its layings: the most likely value, where the can is as its sheet says but for a
 * normal error of the logarithm, and each laying lies in its span but for another. Interval-censored: within its span a
 * laying says nothing, so tests that only agree move nothing.
 *
 * The one that makes (ln f)² / can² + sum of (distance of ln f from each span)² / coat² least: a convex sum, so that
 * its slope is searched for zero.
 *
 * @example fitFactor([{ least: 1.3, most: 1.5 }, ...]) // nearer 1.3 the more of them there are
 */
export function fitFactor(told: readonly FactorSpan[]): number {
  const spans = told.filter((span) => !isFault(span));
  const slope = (logFactor: number): number =>
    logFactor / CAN_FROM_SHEET ** 2 +
    spans.reduce((sum, span) => sum + outside(logFactor, span) / COAT_FROM_CAN ** 2, 0);
  let [low, high] = [Math.log(FACTOR_RANGE.least), Math.log(FACTOR_RANGE.most)];
  // 40 halvings leave a millionth of a millionth.
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (slope(middle) < 0) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/** How far a logarithm lies outside a span: below it less than 0, within it 0. */
function outside(logFactor: number, { least, most }: FactorSpan): number {
  const below = least > 0 ? Math.min(0, logFactor - Math.log(least)) : 0;
  const above = most < Number.POSITIVE_INFINITY ? Math.max(0, logFactor - Math.log(most)) : 0;
  return below + above;
}

const clampFactor = (factor: number): number =>
  Math.min(FACTOR_RANGE.most, Math.max(FACTOR_RANGE.least, factor));

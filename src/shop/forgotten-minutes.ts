import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";

/**
 * A step in hand for more than this many times its highest hands-on time was forgotten and hung much later: how long it
 * took is not known (common practice, no source; a slow evening is well within it).
 */
const FORGOTTEN_TIMES = 4;

/** The minutes a step was in hand, if it can have been worked so long; null: it lay forgotten, nobody knows. */
export function workedMinutes(
  step: Pick<Step, "handsOn"> | undefined,
  minutes: Minutes | null,
): Minutes | null {
  const high = step?.handsOn.high ?? Number.POSITIVE_INFINITY;
  return minutes !== null && minutes > high * FORGOTTEN_TIMES ? null : minutes;
}

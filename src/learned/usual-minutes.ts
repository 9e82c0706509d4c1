import type { StepTime } from "../journal/journal.ts";
import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";
import { median } from "./median.ts";

/** Fewer records than this say less than the process file. */
const RECORDS_NEEDED = 5;

/** The newest so many records count, so that a hand that gets quicker is believed. Ask the journal for these. */
export const RECORDS_USED = 20;

/**
 * Hands-on minutes that a step usually takes this maker: the median of the newest records, which one forgotten timer
 * cannot move, from five records on; until then what the process file holds likely. Whole minutes, rounded up.
 *
 * @param records of this step, newest first
 *
 * Likely 8 and records 9, 10, 12, 11, 240: 11.
 */
export function usualMinutes(
  step: Pick<Step, "handsOn">,
  records: readonly Pick<StepTime, "minutes">[],
): Minutes {
  if (records.length < RECORDS_NEEDED) return Math.ceil(step.handsOn.likely);
  return Math.ceil(median(records.slice(0, RECORDS_USED).map(({ minutes }) => minutes)));
}

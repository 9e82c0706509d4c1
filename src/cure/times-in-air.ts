import { type Coat, TIMED_STAGES } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Minutes } from "../time/instant.ts";
import { cureRate } from "./cure-rate.ts";

/** One time of a coat: by its sheet and in other air; null: never there. */
export interface TimeInAir {
  readonly what: string;
  readonly bySheet: Minutes;
  readonly here: Minutes | null;
}

/**
 * The times of a coat in air that stays as it is: its stages, and where its windows open and shut.
 *
 * @example a resin dry-hard after 24 h at 20 °C is so after 24 h / 1.51 = 15 h 53 at 25 °C, by 60 kJ/mol
 */
export function timesInAir(coat: Coat, air: Air): readonly TimeInAir[] {
  const rate = cureRate(coat, air);
  const time = (what: string, bySheet: Minutes): TimeInAir => ({
    what,
    bySheet,
    here: rate === 0 ? null : Math.ceil(bySheet / rate),
  });
  const stages = TIMED_STAGES.flatMap((stage) => {
    const minutes = coat.stages[stage];
    return minutes === undefined ? [] : [time(stage, minutes)];
  });
  const windows = coat.windows.flatMap(({ opens, shuts, first }) => [
    ...(typeof opens === "number" && opens > 0
      ? [time(first === null ? "next coat from" : `after ${first.do} from`, opens)]
      : []),
    ...(shuts === null ? [] : [time(first === null ? "next coat till" : `after ${first.do} till`, shuts)]),
  ]);
  return [...stages, ...windows];
}

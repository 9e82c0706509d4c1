import { type Coat, TIMED_STAGES } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Minutes } from "../time/instant.ts";
import { coatInAir } from "./coat-in-air.ts";

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
  const there = coatInAir(coat, air);
  const stages = TIMED_STAGES.flatMap((stage) => {
    const bySheet = coat.stages[stage];
    return bySheet === undefined ? [] : [{ what: stage, bySheet, here: there?.stages[stage] ?? null }];
  });
  const windows = coat.windows.flatMap(({ opens, shuts, first }, index) => {
    const window = there?.windows[index];
    const what = first === null ? "next coat" : `after ${first.do}`;
    const opensThere = typeof window?.opens === "number" ? window.opens : null;
    return [
      ...(typeof opens === "number" && opens > 0
        ? [{ what: `${what} from`, bySheet: opens, here: opensThere }]
        : []),
      ...(shuts === null ? [] : [{ what: `${what} till`, bySheet: shuts, here: window?.shuts ?? null }]),
    ];
  });
  return [...stages, ...windows];
}

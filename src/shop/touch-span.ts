import { reachedAt } from "../cure/coat-times.ts";
import type { HangingAir } from "../cure/hanging-air.ts";
import { stagesBySheet } from "../cure/stage.ts";
import type { FactorSpan } from "../cure/touch-fit.ts";
import type { Coat, Stage } from "../process/coat.ts";
import { MINUTE } from "../time/instant.ts";
import type { Hang } from "./shop.ts";

/**
 * What the touch tests of a pass say of its coat, against the minutes by its sheet that it had had in its air: tacky is
 * not yet tack-free, dry at least that, hard at least dry-hard.
 */
export function touchSpan(coat: Coat, { hungAt, touches }: Hang, air: HangingAir): FactorSpan {
  const [tackFree, hard] = [minutesTo(coat, "tack-free"), minutesTo(coat, "dry-hard")];
  let [least, most] = [0, Number.POSITIVE_INFINITY];
  for (const { at, found } of touches) {
    const by = found === "hard" ? hard : tackFree;
    if (by === null || at <= hungAt) continue;
    const times = air.spent(coat, hungAt, at) / by;
    if (found === "tacky") least = Math.max(least, times);
    else most = Math.min(most, times);
  }
  return { least, most };
}

/** Minutes to a stage by the sheet; null: it names none. */
function minutesTo(coat: Coat, stage: Stage): number | null {
  const reached = reachedAt(stagesBySheet(coat), stage);
  return reached === null || reached <= 0 ? null : reached / MINUTE;
}

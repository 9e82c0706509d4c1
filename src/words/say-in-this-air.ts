import type { InThisAir } from "../plan/rotation/rotation-answer.ts";
import { sayUnfit } from "../safety/unfit-air.ts";
import { localTime, minuteOfDay } from "../time/civil.ts";
import { plainText } from "./plain-text.ts";
import { sayClockOfDay } from "./say-time.ts";
import { sayDegrees, sayReading } from "./say-units.ts";
import type { Speech } from "./speech.ts";

/** Why a coat cannot come round day by day in the air there is; times are those of any day. Without a full stop. */
export function sayInThisAir(why: InThisAir, speech: Speech): string {
  if (why.because === "never dries") return plainText(`${why.coat} (${why.step}) never dries in this air`);
  const when = (at: number) => `at ${sayClockOfDay(minuteOfDay(localTime(speech.zone, at)), speech.clock24)}`;
  const unfit =
    why.air === null
      ? "no bench session has air fit for long enough"
      : sayUnfit(why.air, {
          degrees: (celsius) => sayReading(celsius, speech),
          difference: (celsius) => sayDegrees(celsius, speech),
          when,
        });
  const remedy = why.remedy === null ? "" : `: ${why.remedy}`;
  return plainText(`${why.step} may not be done in any bench hours, for ${unfit}${remedy}`);
}

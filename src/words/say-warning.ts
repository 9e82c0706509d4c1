import type { WindowAhead } from "../plan/now-answer.ts";
import { plainText } from "./plain-text.ts";
import { sayPreparation } from "./say-state.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * Told before a coat is laid whose window passes while the bench is shut, without its full stop.
 *
 * @example sayWarning(ahead, speech)
 * // "hung now it opens 16:00 and shuts Sun 13:00 with no bench open in time: lay it Mon 18:00, or count on scuff 5 min;
 * // for a next coat of 8 min in this bench session it had to hang by 11:52"
 */
export function sayWarning(ahead: WindowAhead, speech: Speech): string {
  const { opens, shuts, preparation, nextMinutes, hangBy, layFrom, isAir } = ahead;
  if (opens === null) {
    return "hung now it does not cure in the air that is expected: warm the air, or hang it in a warmer place";
  }
  const count = preparation === null ? "a mend" : sayPreparation(preparation);
  const help =
    layFrom === null ? `count on ${count}` : `lay it ${sayClock(layFrom, speech)}, or count on ${count}`;
  const verb = hangBy !== null && hangBy < speech.now ? "had" : "has";
  const today =
    hangBy === null
      ? ""
      : `; for a next coat of ${sayWait(nextMinutes)} in this bench session it ${verb} to hang by ${sayClock(hangBy, speech)}`;
  const shut = shuts === null ? "" : ` and shuts ${sayClock(shuts, speech)}`;
  const window = `opens ${sayClock(opens, speech)}${shut}`;
  return plainText(
    `hung now it ${window} with no bench open in ${isAir ? "air fit for the next coat" : "time"}: ${help}${today}`,
  );
}

import type { HeldRow } from "../plan/now-answer.ts";
import type { Hold } from "../safety/hold.ts";
import { sayUnfit } from "../safety/unfit-air.ts";
import type { Instant } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { sayClock } from "./say-time.ts";
import { sayDegrees, sayReading } from "./say-units.ts";
import type { Speech } from "./speech.ts";

/** What any hold tells, those of hours included. */
type Held = Pick<Hold, "because" | "remedy" | "air"> & { readonly code: string };

/** Why it is held, alone: air in the maker's units and by the maker's clock. */
export function sayBecause({ because, air }: Pick<Held, "because" | "air">, speech: Speech): string {
  if (air === undefined) return because;
  return sayUnfit(air, {
    degrees: (celsius) => sayReading(celsius, speech),
    difference: (celsius) => sayDegrees(celsius, speech),
    when: (at) => `at ${sayClock(at, speech)}`,
  });
}

/**
 * Why something is held and until when, as a row has it.
 *
 * @example sayHold(hold, hold.until, speech) // "till 19:44, solvent vapour of 1 and 2"
 * @example sayHold(measure, null, speech) // "wood moisture of 3 not measured: measure it"
 */
export function sayHold(hold: Held, until: Instant | null, speech: Speech): string {
  const till = until === null ? "" : `till ${sayClock(until, speech)}, `;
  return plainText(`${till}${sayBecause(hold, speech)}${hold.remedy === null ? "" : `: ${hold.remedy}`}`);
}

/**
 * All that holds a row: what lasts longest, then the rest, each with its end.
 *
 * @example sayHeld(row, speech) // "till 20:00, wet coat of 2; also solvent vapour of 1 till 19:44"
 */
export function sayHeld(row: Pick<HeldRow, "because" | "also" | "until">, speech: Speech): string {
  // What the same act ends needs no word of its own: a pot put away gives off neither heat nor fume.
  const others = (row.also ?? []).filter(({ remedy }) => remedy === null || remedy !== row.because.remedy);
  const also = others.map((hold) => {
    const till = hold.until === null ? "" : ` till ${sayClock(hold.until, speech)}`;
    return `${sayBecause(hold, speech)}${till}${hold.remedy === null ? "" : `: ${hold.remedy}`}`;
  });
  const most = sayHold(row.because, row.until, speech);
  return also.length === 0 ? most : plainText(`${most}; also ${also.join(", ")}`);
}

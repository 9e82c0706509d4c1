import { sayWait } from "./say-time.ts";

/**
 * That the clock cannot be trusted, as a sentence without its full stop.
 *
 * @example sayClockDoubt({ kind: "behind", minutes: 60 }) // "The clock is 1 h behind what was already written down"
 */
export function sayClockDoubt({
  kind,
  minutes,
}: {
  readonly kind: "behind" | "jumped";
  readonly minutes: number;
}): string {
  const wrong = sayWait(Math.abs(minutes));
  return kind === "behind"
    ? `The clock is ${wrong} behind what was already written down`
    : `The clock was moved by ${wrong} while dryline was open`;
}

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
  readonly kind: "behind" | "jumped" | "back";
  readonly minutes: number;
}): string {
  const wrong = sayWait(Math.abs(minutes));
  switch (kind) {
    case "behind":
      return `The clock is ${wrong} behind what was already written down`;
    case "jumped":
      return `The clock was moved ${minutes < 0 ? "back" : "on"} by ${wrong} while dryline was open`;
    case "back":
      return `The clock was ${wrong} ${minutes < 0 ? "behind" : "ahead"} for a while and is right again`;
  }
}

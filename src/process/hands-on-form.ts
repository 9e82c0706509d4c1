import { formatDuration, parseDuration } from "../time/duration.ts";
import type { HandsOn } from "./coat.ts";

/** The longest hands-on work, a day: more is several steps. */
export const LONGEST_HANDS_ON = 1_440;

/**
 * Hands-on minutes as written: one figure, low..high, or low..likely..high. A bare number takes the unit of the last.
 * Of low..high the middle is likely, rounded up. Null: not so written, not rising, nothing, or over a day.
 * `readHandsOn("4..6 min")` is `{ low: 4, likely: 5, high: 6 }`
 */
export function readHandsOn(text: string): HandsOn | null {
  const minutes = readRange(text);
  if (minutes === null || minutes.length > 3) return null;
  const [low = 0, second = low, third] = minutes;
  const high = third ?? second;
  const likely = third === undefined ? Math.ceil((low + high) / 2) : second;
  if (low < 1 || low > likely || likely > high || high > LONGEST_HANDS_ON) return null;
  return { low, likely, high };
}

/** Reads back to the same. `writeHandsOn({ low: 5, likely: 8, high: 12 }) === "5..8..12 min"` */
export function writeHandsOn({ low, likely, high }: HandsOn): string {
  if (low === high) return formatDuration(low);
  const figures = likely === Math.ceil((low + high) / 2) ? [low, high] : [low, likely, high];
  return `${figures.join("..")} min`;
}

/**
 * Durations joined by `..`, in minutes; a bare number takes the unit of the last. Null: one of them is none.
 * `readRange("0 .. 2 h")` is `[0, 120]`
 */
export function readRange(text: string): number[] | null {
  const parts = text.split("..").map((part) => part.trim());
  const unit = /^\d+(?:[.,]\d+)?\s*([a-z]+)$/i.exec(parts.at(-1) ?? "")?.[1] ?? "";
  const minutes = parts.map((part) => parseDuration(/^\d+(?:[.,]\d+)?$/.test(part) ? part + unit : part));
  return minutes.every((figure) => figure !== null) ? minutes : null;
}

import { formatDuration, parseDuration } from "../time/duration.ts";
import type { Minutes } from "../time/instant.ts";
import { LONGEST_WAIT, TIMED_STAGES, type Window } from "./coat.ts";
import { readRange } from "./hands-on-form.ts";

/** An opening as written: a stage stands for the minutes the coat's sheet gives it. */
export type WrittenOpening = Minutes | "flash-off" | (typeof TIMED_STAGES)[number];

/** The span of a window as written, before stages are looked up. */
export interface WrittenSpan {
  readonly opens: WrittenOpening;
  readonly shuts: Minutes | null;
}

/**
 * The span of a window: `4 h .. 24 h`, `0 .. 2 h`, `4 h ..` (never shuts), `from 24 h` (the same),
 * `flash-off ..`, `tack-free .. 24 h`. Null: not so written, or it shuts before it opens.
 */
export function readSpan(text: string): WrittenSpan | null {
  const words = text.trim();
  const from = /^from\s+(.+)$/.exec(words);
  const [first = "", last, ...more] = (from === null ? words : `${from[1]} ..`)
    .split("..")
    .map((part) => part.trim());
  if (last === undefined || more.length > 0) return null;
  if (last === "") return spanOf(readOpening(first), null);
  const both = readRange(words);
  const opens = both?.[0] ?? readOpening(first);
  const shuts = both?.[1] ?? parseDuration(last);
  return shuts === null ? null : spanOf(opens, shuts);
}

function spanOf(opens: WrittenOpening | null, shuts: Minutes | null): WrittenSpan | null {
  if (opens === null || (typeof opens === "number" && opens > LONGEST_WAIT)) return null;
  if (shuts === null) return { opens, shuts };
  const rising = typeof opens !== "number" || opens < shuts;
  return rising && shuts >= 1 && shuts <= LONGEST_WAIT ? { opens, shuts } : null;
}

/** When a window opens: a duration, the name of a stage, or `flash-off`. */
export function readOpening(text: string): WrittenOpening | null {
  const words = text.trim();
  const named = ["flash-off" as const, ...TIMED_STAGES].find((name) => name === words);
  return named ?? (words === "0" ? 0 : parseDuration(words));
}

/** Reads back to the same. `writeSpan({ opens: 240, shuts: 1440 }) === "4 h .. 24 h"` */
export function writeSpan({ opens, shuts }: Pick<Window, "opens" | "shuts">): string {
  const from = opens === "flash-off" ? opens : formatDuration(opens);
  return shuts === null ? `${from} ..` : `${from} .. ${formatDuration(shuts)}`;
}

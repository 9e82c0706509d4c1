import { formatDuration, parseDuration } from "../time/duration.ts";
import { LONGEST_WAIT } from "./coat.ts";
import type { SetUp } from "./step.ts";

type Keeps = SetUp["keeps"];

/** A cup that serves more pieces than this is a slip of the key. */
const MOST_SERVED = 99;

/**
 * How long a set-up keeps, as written in one of three ways: `45 min from last use`, `30 min from mixing, serves 4`,
 * `until another load`. Null: in none of them.
 */
export function readKeeps(text: string): Keeps | null {
  const words = text.trim().replace(/\s+/g, " ");
  if (words === "until another load") return { way: "load" };
  const heat = /^(.+) from last use$/.exec(words);
  const mix = /^(.+) from mixing, ?serves (\d{1,3})$/.exec(words);
  const minutes = parseDuration(heat?.[1] ?? mix?.[1] ?? "");
  if (minutes === null || minutes < 1 || minutes > LONGEST_WAIT) return null;
  if (mix === null) return { way: "heat", minutes };
  const serves = Number(mix[2]);
  return serves >= 1 && serves <= MOST_SERVED ? { way: "mix", minutes, serves } : null;
}

/** Reads back to the same. */
export function writeKeeps(keeps: Keeps): string {
  switch (keeps.way) {
    case "heat":
      return `${formatDuration(keeps.minutes)} from last use`;
    case "mix":
      return `${formatDuration(keeps.minutes)} from mixing, serves ${keeps.serves}`;
    case "load":
      return "until another load";
  }
}

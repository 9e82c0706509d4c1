import type { NowAnswer, PreparedRow } from "../plan/now-answer.ts";
import type { Instant } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { sayTags } from "./say-list.ts";
import { sayClock, sayWait } from "./say-time.ts";
import { sayPrepared } from "./say-waiting.ts";
import type { Speech } from "./speech.ts";

/** So long before the bench shuts, the last words are due. */
const LAST_MINUTES = 15;

/** Whether the maker is about to go: the bench shuts within a quarter of an hour or has shut, and nothing is in hand. */
export function isClosing({ bench, inHand }: NowAnswer): boolean {
  const working = inHand.some((row) => !row.left && row.forgotten === null);
  return !working && (bench.closes === null || bench.minutesLeft <= LAST_MINUTES);
}

/**
 * The last words of an evening: what still stands at the stations, what opens next, what shuts first.
 *
 * @example sayClosing(answer, speech)
 * // ["Nothing hot, nothing mixed, nothing loaded.", "Next opens 23:04 (1 and 2), first shuts Tue 19:04 (1 and 2)."]
 */
export function sayClosing(answer: NowAnswer, speech: Speech): string[] {
  return [...sayStanding(answer.prepared, speech), ...sayComing(answer, speech)].map(plainText);
}

/** What must still be put away, a line each, or that nothing stands. */
function sayStanding(prepared: readonly PreparedRow[], speech: Speech): string[] {
  if (prepared.length === 0) return ["Nothing hot, nothing mixed, nothing loaded."];
  return prepared.map((row) => `Put away before you go: ${sayPrepared(row, speech)}.`);
}

/** The next opening, the first shut and the next session, so far as there are any. */
function sayComing({ waiting, bench }: NowAnswer, speech: Speech): string[] {
  const said: string[] = [];
  const opens = firstOf(
    waiting.map(({ tag, opens: at }) => ({ tag, at })),
    speech.now,
  );
  const shuts = firstOf(
    waiting.map(({ tag, shuts: at }) => ({ tag, at })),
    speech.now,
  );
  if (opens !== null) said.push(`next opens ${sayClock(opens.at, speech)} (${sayTags(opens.tags)})`);
  if (shuts !== null) said.push(`first shuts ${sayClock(shuts.at, speech)} (${sayTags(shuts.tags)})`);
  if (said.length === 0) said.push("nothing opens or shuts by the clock");
  if (bench.opensNext !== null) {
    const away = sayWait((bench.opensNext - speech.now) / 60_000);
    said.push(`the bench opens again ${sayClock(bench.opensNext, speech)}, in ${away}`);
  }
  const sentence = said.join(", ");
  return [`${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`];
}

/** The first of the moments still to come, with all tags that share it. */
function firstOf(
  moments: readonly { readonly tag: number; readonly at: Instant | null }[],
  now: Instant,
): { readonly at: Instant; readonly tags: readonly number[] } | null {
  const coming = moments.flatMap(({ tag, at }) => (at !== null && at > now ? [{ tag, at }] : []));
  if (coming.length === 0) return null;
  const at = Math.min(...coming.map((moment) => moment.at));
  return { at, tags: coming.filter((moment) => moment.at === at).map(({ tag }) => tag) };
}

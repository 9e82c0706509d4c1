import type { NowAnswer } from "../plan/now-answer.ts";
import type { BenchHours, Session } from "../time/bench-hours.ts";
import { addDays, instantOf } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { nextSession, sessionsBetween } from "../time/sessions.ts";
import { plainText } from "./plain-text.ts";
import { sayTags } from "./say-list.ts";
import { sayClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What days away bring: which windows shut before the bench opens again, and whether there is bench time to do
 * something about it first.
 *
 * @param hours with the days away already in them
 */
export function sayAway(
  answer: NowAnswer,
  away: { readonly from: CivilDate; readonly to: CivilDate },
  { hours, ...speech }: Speech & { readonly hours: BenchHours },
): string[] {
  const leaves = instantOf(speech.zone, away.from, 0);
  const returns = instantOf(speech.zone, addDays(away.to, 1), 0);
  const opens = nextSession(hours, speech.zone, Math.max(returns, speech.now) - 1);
  const back = opens?.opens ?? returns;
  const sessions = sessionsBetween(hours, speech.zone, speech.now, leaves);
  // What shuts while the bench is still open has nothing to do with the days away.
  const from = sessions.at(-1)?.closes ?? speech.now;
  const shutting = answer.waiting.filter(
    ({ shuts, state }) => shuts !== null && shuts > from && shuts < back && state !== "shut",
  );
  if (shutting.length === 0) return ["No window shuts meanwhile."];
  const lines = shutting
    .sort((a, b) => (a.shuts ?? 0) - (b.shuts ?? 0))
    .map(({ tag, step, shuts }) => `${tag} ${step} shuts ${sayClock(shuts ?? 0, speech)}.`);
  const tags = sayTags(shutting.map(({ tag }) => tag));
  return [...lines, sayChance(sessions, tags, speech)].map(plainText);
}

/** Whether the bench is open before the days away: now or next, and till when at the last. */
function sayChance(sessions: readonly Session[], tags: string, speech: Speech): string {
  const [first] = sessions;
  if (first === undefined) {
    return `No bench is open before you go, so nothing can be brought to a resting stage first.`;
  }
  const when =
    first.opens <= speech.now
      ? `is open till ${sayClock(first.closes, speech)}`
      : `opens ${sayClock(first.opens, speech)}`;
  const last = sessions.at(-1) ?? first;
  const atLast = last === first ? "" : `, at the last till ${sayClock(last.closes, speech)}`;
  return `The bench ${when}${atLast}: bring ${tags} to a resting stage before you go.`;
}

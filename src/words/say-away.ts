import type { NowAnswer } from "../plan/now-answer.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import { addDays, instantOf } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { nextSession } from "../time/sessions.ts";
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
  const shutting = answer.waiting.filter(
    ({ shuts, state }) => shuts !== null && shuts > speech.now && shuts < back && state !== "shut",
  );
  if (shutting.length === 0) return ["No window shuts meanwhile."];
  const lines = shutting
    .sort((a, b) => (a.shuts ?? 0) - (b.shuts ?? 0))
    .map(({ tag, step, shuts }) => `${tag} ${step} shuts ${sayClock(shuts ?? 0, speech)}.`);
  const tags = sayTags(shutting.map(({ tag }) => tag));
  return [...lines, sayChance(answer, leaves, tags, { ...speech, hours })].map(plainText);
}

/** Whether the bench opens once more before the days away. */
function sayChance(
  { bench }: NowAnswer,
  leaves: number,
  tags: string,
  { hours, ...speech }: Speech & { readonly hours: BenchHours },
): string {
  if (bench.closes !== null && speech.now < leaves) {
    return `The bench is open till ${sayClock(bench.closes, speech)}: bring ${tags} to a resting stage before you go.`;
  }
  const next = nextSession(hours, speech.zone, speech.now);
  if (next !== null && next.opens < leaves) {
    return `The bench opens ${sayClock(next.opens, speech)}: bring ${tags} to a resting stage before you go.`;
  }
  return `No bench is open before you go, so nothing can be brought to a resting stage first.`;
}

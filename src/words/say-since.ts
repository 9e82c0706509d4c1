import type { NowAnswer } from "../plan/now-answer.ts";
import type { Instant } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { sayTags } from "./say-list.ts";
import { sayClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What the clock did while nobody looked: which pieces opened or shut, and what kept too long, oldest first.
 *
 * @param since when the maker was last here
 * @example saySince(answer, since, speech) // ["1 and 2 opened 23:04"]
 */
export function saySince(answer: NowAnswer, since: Instant, speech: Speech): string[] {
  const passed = (at: Instant | null): at is Instant => at !== null && at > since && at <= answer.at;
  const happened = new Map<string, { at: Instant; what: string; tags: number[] }>();
  const note = (at: Instant, what: string, tag: number): void => {
    const entry = happened.get(`${at} ${what}`) ?? { at, what, tags: [] };
    entry.tags.push(tag);
    happened.set(`${at} ${what}`, entry);
  };
  for (const { tag, state, opens, shuts, hard } of answer.waiting) {
    // What opened as it shut only asks for preparation from then on.
    if (passed(opens) && !(state === "shut" && opens === shuts)) note(opens, "opened", tag);
    if (passed(shuts)) note(shuts, "shut", tag);
    if (passed(hard) && opens !== hard) note(hard, "dry-hard", tag);
  }
  const pieces = [...happened.values()].map(({ at, what, tags }) => ({
    at,
    line: `${sayTags(tags)} ${what} ${sayClock(at, speech)}`,
  }));
  const stations = answer.prepared.flatMap(({ station, setUp, until }) =>
    passed(until)
      ? [{ at: until, line: `${setUp} at the ${station} kept till ${sayClock(until, speech)}` }]
      : [],
  );
  return [...pieces, ...stations].sort((a, b) => a.at - b.at).map(({ line }) => plainText(line));
}

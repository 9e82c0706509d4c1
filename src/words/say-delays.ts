import type { Tag } from "../journal/event.ts";
import type { Finishes } from "../plan/compare-finishes.ts";
import { minutesBetween } from "../time/instant.ts";
import { sayTags } from "./say-list.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * Whom it delays that some pieces come first, and what it brings them.
 *
 * @param finishes when each piece is finished as things are, and with these pieces first
 * @example sayDelays([5], finishes, speech)
 * // ["5 would be finished Sat 15:50, not Mon 18:20.", "It delays 4 by 1 d 2 h, to Sun 20:00."]
 */
export function sayDelays(
  first: readonly Tag[],
  { before, after, broken }: Finishes,
  speech: Speech,
): string[] {
  const gains = first.flatMap((tag) => {
    const [was, will] = [before.get(tag) ?? null, after.get(tag) ?? null];
    if (will === null) return [`${tag} would not be finished in the days looked at.`];
    if (was !== null && will >= was)
      return [`${tag} would be finished ${sayClock(will, speech)} either way.`];
    const instead = was === null ? "" : `, not ${sayClock(was, speech)}`;
    return [`${tag} would be finished ${sayClock(will, speech)}${instead}.`];
  });
  const delayed = [...before].flatMap(([tag, was]) => {
    if (first.includes(tag) || was === null) return [];
    const will = after.get(tag) ?? null;
    if (will === null) return [`It delays ${tag} beyond the days looked at.`];
    if (will <= was) return [];
    return [`It delays ${tag} by ${sayWait(minutesBetween(was, will))}, to ${sayClock(will, speech)}.`];
  });
  const late = broken.filter((tag) => !first.includes(tag));
  const promises = late.length === 0 ? [] : [`Too late then for the day promised: ${sayTags(late)}.`];
  return [...gains, ...(delayed.length === 0 ? ["It delays nobody."] : delayed), ...promises];
}

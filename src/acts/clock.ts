import type { JournalEvent, Seq } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { boundsOf } from "./bounds.ts";
import { checkWhole } from "./check-value.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** Minutes of ten years: what nothing holds in place may be set back so far. */
const FURTHEST_BACK = 10 * 366 * 24 * 60;

/**
 * "The clock was wrong by N minutes": what was recorded ahead of now is set back, as far as needed to lie behind it and
 * not so far that it would come before what it followed.
 */
export function decideClock(request: ActOf<"clock">, shop: Shop, context: DecideContext): Decision {
  const { now } = context;
  const since = firstAhead(shop, now);
  if (since === null) return refuse({ code: "nothing changes", what: "clock" });
  const ahead = shop.acts.flatMap(({ events }) => events.filter(({ seq }) => seq >= since));
  const newest = Math.max(shop.newestRecorded ?? now, ...ahead.map(({ recorded }) => recorded));
  const least = Math.ceil((newest - now) / MINUTE);
  const unfit = checkWhole("minutes", request.minutes, least, Math.max(least, mostBack(ahead, since, shop)));
  if (unfit) return unfit;
  const { minutes, at } = request;
  const event = { kind: "clock", at, tag: null, station: null, since, minutes } as const;
  return { ...decided([event], shop), expects: { tags: {}, stations: {}, newest: shop.newest } };
}

/** The first event of those recorded ahead of now; null: none was. */
function firstAhead(shop: Shop, now: Instant): Seq | null {
  const ahead = shop.acts.flatMap(({ events }) => events).find(({ recorded }) => recorded > now);
  if (ahead) return ahead.seq;
  // Only what was taken back since is ahead: the newest event of all.
  return (shop.newestRecorded ?? now) > now ? shop.newest : null;
}

/** Minutes by which events can be set back before one comes before an earlier event that stays. */
function mostBack(events: readonly JournalEvent[], since: Seq, shop: Shop): number {
  const gaps = events.flatMap((event) =>
    boundsOf(event, shop)
      .filter(({ seq, side }) => side === "not before" && seq < since)
      .map(({ at }) => Math.floor((event.at - at) / MINUTE)),
  );
  return Math.min(...gaps, FURTHEST_BACK);
}

import type { JournalEvent, NewEvent, Seq } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { boundsOf } from "./bounds.ts";
import { checkThat, checkWhole } from "./check-value.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** Minutes of ten years: what nothing holds in place may be moved so far. */
const FURTHEST = 10 * 366 * 24 * 60;

type Clock = ActOf<"clock">;

/**
 * "The clock was wrong by N minutes": what it stamped is set right, back or forward. Nothing may then lie ahead of now,
 * nor come before what it followed or after what followed it.
 *
 * A correction reaches to the newest event; where a right clock has stamped some since, a second one takes it back for
 * those. Unless said, what was recorded ahead of now is meant, and nothing that a right clock has stamped after it.
 */
export function decideClock(request: Clock, shop: Shop, context: DecideContext): Decision {
  const { now } = context;
  const { minutes, at } = request;
  const since = request.since ?? firstAhead(shop, now);
  const until = request.since === null ? rightSince(shop, since, now) : request.until;
  if (since === null || minutes === 0)
    return refuse({ code: "nothing changes", what: "nothing was written ahead of now" });
  if (until !== null && until <= since) return refuse({ code: "no such act", act: until });
  const all = shop.acts.flatMap(({ events }) => events);
  const wrong = all.filter(({ seq }) => seq >= since && (until === null || seq < until));
  const unfit = request.since === null ? null : checkMeant(request.since, wrong, all);
  if (unfit) return unfit;
  const newest = request.since === null ? [shop.newestRecorded ?? now] : [];
  const latest = Math.max(...newest, ...wrong.flatMap((event) => [event.recorded, event.at]));
  const least = Math.max(Math.ceil((latest - now) / MINUTE), leastBack(wrong, until, shop));
  const range = checkMinutes(minutes, least, Math.max(least, mostBack(wrong, since, shop)));
  if (range) return range;
  const event = { kind: "clock", at, tag: null, station: null } as const;
  const events: NewEvent[] = [
    { ...event, since, minutes },
    ...(until === null ? [] : [{ ...event, since: until, minutes: -minutes }]),
  ];
  return { ...decided(events, shop), expects: { tags: {}, stations: {}, newest: shop.newest } };
}

/** Minutes as the maker says them: set back from least to most, or forward. */
function checkMinutes(minutes: number, least: number, most: number): Refused | null {
  if (minutes < 0 && least >= 0) {
    const expected = "no minute forward, for what was written since would then lie ahead of now";
    return checkThat(false, "minutes", -minutes, expected);
  }
  return minutes < 0 && least < 0
    ? checkWhole("minutes", -minutes, Math.max(0, -most), -least)
    : checkWhole("minutes", minutes, Math.max(0, least), most);
}

/** The first event of those recorded ahead of now; null: none was. */
function firstAhead(shop: Shop, now: Instant): Seq | null {
  const ahead = shop.acts.flatMap(({ events }) => events).find(({ recorded }) => recorded > now);
  if (ahead) return ahead.seq;
  // Only what was taken back since is ahead: the newest event of all.
  return (shop.newestRecorded ?? now) > now ? shop.newest : null;
}

/** The first event after one ahead of now that is not: by then the clock was right again; null: it was not yet. */
function rightSince(shop: Shop, since: Seq | null, now: Instant): Seq | null {
  const events = shop.acts.flatMap(({ events }) => events);
  return events.find(({ seq, recorded }) => seq > (since ?? seq) && recorded <= now)?.seq ?? null;
}

/** Refuses a span with nothing in it, or one that was set right before: two terminals see the same clock jump. */
function checkMeant(
  since: Seq,
  wrong: readonly JournalEvent[],
  all: readonly JournalEvent[],
): Refused | null {
  if (wrong.length === 0) return refuse({ code: "no such act", act: since });
  const again = all.some((event) => event.kind === "clock" && since < event.seq);
  return again ? refuse({ code: "nothing changes", what: "the clock was set right for that" }) : null;
}

/** Minutes by which events can be set back before one comes before an earlier event that stays. */
function mostBack(events: readonly JournalEvent[], since: Seq, shop: Shop): number {
  const gaps = events.flatMap((event) =>
    boundsOf(event, shop)
      .filter(({ seq, side }) => side === "not before" && seq < since)
      .map(({ at }) => Math.floor((event.at - at) / MINUTE)),
  );
  return Math.min(...gaps, FURTHEST);
}

/** Minutes by which they must be set back so that none comes after a later event that stays; negative: may go forward. */
function leastBack(events: readonly JournalEvent[], until: Seq | null, shop: Shop): number {
  const gaps = events.flatMap((event) =>
    boundsOf(event, shop)
      .filter(({ seq, side }) => side === "not after" && until !== null && seq >= until)
      .map(({ at }) => Math.ceil((event.at - at) / MINUTE)),
  );
  return Math.max(...gaps, -FURTHEST);
}

import type { EventBody, NewEvent } from "../journal/event.ts";
import type { ActRecord, Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { type Decision, decided } from "./decision.ts";

/**
 * One event for each tag and station of an act, so that a reading of any of them finds it. It leans on the whole
 * journal: whatever is newer may have changed what may be said of the act.
 */
export function aboutAct(
  body: Extract<EventBody, { kind: "undone" | "amended" }>,
  { tags, stations }: Pick<ActRecord, "tags" | "stations">,
  at: Instant,
  shop: Shop,
): Extract<Decision, { events: unknown }> {
  const events: NewEvent[] = [
    ...tags.map((tag) => ({ ...body, at, tag, station: null })),
    ...stations.map((station) => ({ ...body, at, tag: null, station })),
  ];
  if (events.length === 0) events.push({ ...body, at, tag: null, station: null });
  const decision = decided(events, shop);
  return { ...decision, expects: { ...decision.expects, newest: shop.newest } };
}

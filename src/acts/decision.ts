import type { NewEvent, Tag } from "../journal/event.ts";
import type { Append } from "../journal/journal.ts";
import type { Shop } from "../shop/shop.ts";
import type { Refusal } from "./refusal.ts";

/** Events to append and what they lean on, or a named "no". Nothing else: acts have no effects. */
export type Decision =
  | {
      readonly events: readonly NewEvent[];
      readonly expects: Append["expects"];
      readonly processes: Append["processes"];
    }
  | { readonly refusal: Refusal };

/**
 * A decision for these events. It expects every piece they touch, and every station whose set-up they change or lean
 * on, to be as the shop shows it. A station that is only worked at is not leaned on: two terminals at one bench with
 * different pieces never collide.
 */
export function decided(
  events: readonly NewEvent[],
  shop: Shop,
  leansOn: readonly string[] = [],
): Extract<Decision, { events: unknown }> {
  const tags = new Set<Tag>();
  const stations = new Set(leansOn);
  for (const event of events) {
    if (event.tag !== null && shop.pieces.has(event.tag)) tags.add(event.tag);
    if (event.station !== null && event.tag === null) stations.add(event.station);
  }
  return {
    events,
    expects: {
      tags: Object.fromEntries([...tags].map((tag) => [tag, shop.pieces.get(tag)?.lastSeq ?? 0])),
      stations: Object.fromEntries(
        [...stations].map((name) => [name, shop.stations.get(name)?.lastSeq ?? 0]),
      ),
    },
    processes: [],
  };
}

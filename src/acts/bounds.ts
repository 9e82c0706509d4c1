import type { JournalEvent, Seq, Tag } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { concernOf, eventsOf, mustKeepOrder } from "./event-order.ts";
import { nameEvent } from "./name-act.ts";

/** Something that an event cannot be before, or cannot be after. */
export interface Bound {
  /** The event that bounds. */
  readonly seq: Seq;
  readonly side: "not before" | "not after";
  readonly at: Instant;
  /** Null: of a station, which `what` then says enough of. */
  readonly tag: Tag | null;
  readonly what: string;
  /** It is the tagging itself. */
  readonly tagging: boolean;
}

/** All that holds an event of the journal in its place in time: events of other acts that it must keep its order with. */
export function boundsOf(event: JournalEvent, shop: Shop): readonly Bound[] {
  const others = event.tag === null ? othersAtStation(event, shop) : othersOnPiece(event, event.tag, shop);
  const bounds = others
    .filter(({ act }) => act !== event.act)
    .map(
      (other): Bound => ({
        seq: other.seq,
        side: other.seq < event.seq ? "not before" : "not after",
        at: other.at,
        tag: event.tag,
        what: nameEvent(other),
        tagging: other.kind === "tagged",
      }),
    );
  if (event.kind !== "tagged" || event.hung === null) return bounds;
  const { since, step } = event.hung;
  return [
    ...bounds,
    { seq: event.seq, side: "not before", at: since, tag: event.tag, what: `hung ${step}`, tagging: false },
  ];
}

function othersOnPiece(event: JournalEvent, tag: Tag, shop: Shop): readonly JournalEvent[] {
  const piece = shop.pieces.get(tag);
  if (!piece) return [];
  return eventsOf(tag, shop).filter((other) => {
    // Nothing of a piece comes before its tagging, a note neither.
    if (event.kind === "tagged" || other.kind === "tagged") return other.kind !== "amended";
    return mustKeepOrder(piece, concernOf(event), concernOf(other));
  });
}

/** What was readied and put away at one station keeps its order; what was worked there meanwhile is the pieces' own. */
function othersAtStation({ kind, station }: JournalEvent, shop: Shop): readonly JournalEvent[] {
  if (kind !== "readied" && kind !== "put away") return [];
  return shop.acts.flatMap(({ events }) =>
    events.filter(
      (other) => other.station === station && (other.kind === "readied" || other.kind === "put away"),
    ),
  );
}

import type { EventBody, JournalEvent, Tag } from "../journal/event.ts";
import { stepsAfter } from "../process/order.ts";
import type { Piece, Shop } from "../shop/shop.ts";

/**
 * What an event of a piece has to do with the order of its work: one step, the whole piece (a mend, a scrapping), or
 * nothing (a note may be dated anywhere after the tagging).
 */
export type Concern = { readonly step: string } | "piece" | "nothing";

/** @example concernOf({ kind: "left", step: "drill", pass: 1, part: "step" }) // { step: "drill" } */
export function concernOf(event: EventBody): Concern {
  switch (event.kind) {
    case "taken":
    case "left":
    case "hung":
    case "touched":
      return { step: event.step };
    case "tagged":
    case "routed":
    case "moved":
    case "mended":
    case "scrapped":
    case "gone":
      return "piece";
    case "changed":
      // A scheme cut short may be what finishes a step, or the piece.
      return event.scheme === undefined ? "nothing" : "piece";
    default:
      return "nothing";
  }
}

/**
 * Whether two doings on one piece must keep their order in time: those of the same step, of steps that follow each
 * other, and whatever concerns the whole piece. Two branches of a route are free of each other.
 */
export function mustKeepOrder(piece: Piece, one: Concern, other: Concern): boolean {
  if (one === "nothing" || other === "nothing") return false;
  if (one === "piece" || other === "piece" || one.step === other.step) return true;
  const follows = (first: string, second: string) => stepsAfter(piece.route, first).includes(second);
  return follows(one.step, other.step) || follows(other.step, one.step);
}

/** The live events of one piece in the order they were written. */
export function eventsOf(tag: Tag, shop: Shop): readonly JournalEvent[] {
  return shop.acts.flatMap(({ events }) => events.filter((event) => event.tag === tag));
}

/** The latest event of a piece, by time, that something of this concern must come after; null: none but the tagging. */
export function latestBefore(piece: Piece, concern: Concern, shop: Shop): JournalEvent | null {
  return eventsOf(piece.tag, shop)
    .filter((event) => event.kind !== "tagged" && mustKeepOrder(piece, concern, concernOf(event)))
    .reduce<JournalEvent | null>((latest, event) => (latest && latest.at > event.at ? latest : event), null);
}

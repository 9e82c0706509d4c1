import type { Piece, Shop } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { type Concern, latestBefore } from "./event-order.ts";
import { nameEvent } from "./name-act.ts";
import { type Refused, refuse } from "./refuse.ts";

/** Something about to be written of a piece, for its place in time. */
export interface Timed {
  readonly piece: Piece;
  readonly concern: Concern;
}

/**
 * Checks that a time is not before a piece was tagged, nor before what must come first.
 *
 * A clock time as said is a whole minute: "taken 18:50" typed at 18:50:30 and "hung 18:50" after it is no mistake, and
 * the act is then put right after what it follows.
 *
 * @returns the time to write, the same for all, or why it cannot be
 */
export function checkTime(at: Instant, all: readonly Timed[], shop: Shop): { at: Instant } | Refused {
  let time = at;
  for (const { piece, concern } of all) {
    if (piece.taggedAt > at && !isSaidMinute(at, piece.taggedAt)) {
      return refuse({ code: "before it was tagged", tag: piece.tag, taggedAt: piece.taggedAt, at });
    }
    const last = latestBefore(piece, concern, shop);
    if (last && last.at > at && !isSaidMinute(at, last.at)) {
      return refuse({ code: "before the last", tag: piece.tag, lastAt: last.at, what: nameEvent(last), at });
    }
    time = Math.max(time, piece.taggedAt, last?.at ?? time);
  }
  return { at: time };
}

/** Whether `at` is the whole minute that `moment` falls in, as a clock would be read out. */
export function isSaidMinute(at: Instant, moment: Instant): boolean {
  return at % MINUTE === 0 && Math.floor(moment / MINUTE) * MINUTE === at;
}

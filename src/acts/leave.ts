import type { NewEvent } from "../journal/event.ts";
import { handsOf } from "../shop/hands.ts";
import { isHalfLaid, type PieceInHand } from "../shop/put-down.ts";
import type { Shop } from "../shop/shop.ts";
import { findStep } from "../shop/steps.ts";
import type { Instant } from "../time/instant.ts";
import { checkTime } from "./check-time.ts";
import { type Decision, decided } from "./decision.ts";
import { findPiecesOut } from "./find-pieces.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Puts down half-done work, to go on with later. A coat already begun cannot be left: it would dry as it lies.
 *
 * Refuses what is not in hand. Its minutes so far are kept; those until it is taken again do not count.
 */
export function decideLeave(request: ActOf<"leave">, shop: Shop): Decision {
  const pieces = findPiecesOut(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const hands: PieceInHand[] = [];
  for (const piece of pieces) {
    const hand = handsOf(piece).running;
    if (!hand) return refuse({ code: "not in hand", tag: piece.tag });
    if (isHalfLaid(piece, hand)) return refuse({ code: "coat half laid", tag: piece.tag, step: hand.step });
    hands.push({ piece, hand });
  }
  const events = leaveAll(request.at, hands, shop);
  return isRefused(events) ? events : decided(events, shop);
}

/** The events that put these down at one time, or why that time cannot be. */
export function leaveAll(
  at: Instant,
  hands: readonly PieceInHand[],
  shop: Shop,
): readonly NewEvent[] | Refused {
  const time = checkTime(
    at,
    hands.map(({ piece, hand }) => ({ piece, concern: { step: hand.step } })),
    shop,
  );
  if (isRefused(time)) return time;
  return hands.map(({ piece, hand: { step, pass, part } }) => {
    const station = findStep(piece, step)?.station ?? null;
    return { kind: "left", at: time.at, tag: piece.tag, station, step, pass, part };
  });
}

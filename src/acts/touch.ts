import type { NewEvent } from "../journal/event.ts";
import { coatState } from "../shop/coat-state.ts";
import type { Shop } from "../shop/shop.ts";
import { checkTime } from "./check-time.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces } from "./find-pieces.ts";
import { refuseUntouchable } from "./hanging.ts";
import { isRefused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Tells what a touch test of each piece's newest coat found.
 *
 * Refuses a piece in hand (under the new coat), one with no coat, one sold or given.
 */
export function decideTouch(request: ActOf<"touch">, shop: Shop): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const events: NewEvent[] = [];
  for (const piece of pieces) {
    const untouchable = refuseUntouchable(piece);
    if (untouchable) return untouchable;
    const coat = coatState(piece, request.at);
    if (!coat) return refuse({ code: "no coat", tag: piece.tag });
    const time = checkTime(request.at, [{ piece, concern: { step: coat.step } }], shop);
    if (isRefused(time)) return time;
    const { step, pass } = coat;
    events.push({
      kind: "touched",
      at: time.at,
      tag: piece.tag,
      station: null,
      step,
      pass,
      found: request.found,
    });
  }
  return decided(events, shop);
}

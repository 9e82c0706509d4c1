import { handsOf } from "../shop/hands.ts";
import type { Piece } from "../shop/shop.ts";
import { type Refused, refuse } from "./refuse.ts";

/**
 * Why the coat on a piece cannot be touched, nor the piece moved: it is in hand, perhaps under a new coat, or no longer
 * in the shop. A finished or scrapped one still hangs here. Null: it can.
 */
export function refuseUntouchable(piece: Piece): Refused | null {
  const { tag, end } = piece;
  const hand = handsOf(piece).running;
  if (end && end.how !== "finished" && end.how !== "scrapped") {
    return refuse({ code: "ended", tag, how: end.how, at: end.at });
  }
  return hand ? refuse({ code: "already in hand", tag, step: hand.step, since: hand.since }) : null;
}

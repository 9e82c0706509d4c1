import type { NewEvent } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { checkTime } from "./check-time.ts";
import { checkName } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces } from "./find-pieces.ts";
import { refuseUntouchable } from "./hanging.ts";
import { isRefused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Hangs pieces in another place. A full one is the maker's to judge: where a piece hangs is a fact.
 *
 * Refuses a piece in hand, and one on which no work was done yet.
 */
export function decideMove(request: ActOf<"move">, shop: Shop): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const place = request.place.trim();
  const unfit = checkName("place", place);
  if (unfit) return unfit;
  const events: NewEvent[] = [];
  for (const piece of pieces) {
    const { tag } = piece;
    const untouchable = refuseUntouchable(piece);
    if (untouchable) return untouchable;
    if (piece.begunAt === null) return refuse({ code: "not begun", tag });
    if (piece.place === place) return refuse({ code: "nothing changes", what: `${tag} hangs on ${place}` });
    const time = checkTime(request.at, [{ piece, concern: "piece" }], shop);
    if (isRefused(time)) return time;
    events.push({ kind: "moved", at: time.at, tag, station: null, place });
  }
  return decided(events, shop);
}

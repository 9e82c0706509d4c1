import type { Shop } from "../shop/shop.ts";
import { checkTime } from "./check-time.ts";
import { checkText } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces } from "./find-pieces.ts";
import { isRefused } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Keeps a line of the maker's with pieces, whatever has become of them; without tags it is of the whole shop.
 *
 * It may be dated anywhere after the tagging.
 */
export function decideNote(request: ActOf<"note">, shop: Shop): Decision {
  const unfit = checkText("note", request.text);
  if (unfit) return unfit;
  const text = request.text.trim();
  if (request.tags.length === 0) {
    return decided([{ kind: "noted", at: request.at, tag: null, station: null, text }], shop);
  }
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const time = checkTime(
    request.at,
    pieces.map((piece) => ({ piece, concern: "nothing" })),
    shop,
  );
  if (isRefused(time)) return time;
  return decided(
    pieces.map(({ tag }) => ({ kind: "noted", at: time.at, tag, station: null, text })),
    shop,
  );
}

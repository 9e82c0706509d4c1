import type { Tag } from "../journal/event.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";

/** The pieces of the tags said, each once, in the order said; the first tag that is not there refuses them all. */
export function findPieces(tags: readonly Tag[], shop: Shop): readonly Piece[] | Refused {
  if (tags.length === 0) {
    return refuse({ code: "unfit value", what: "tags", value: "", expected: "at least one tag" });
  }
  const pieces: Piece[] = [];
  for (const tag of new Set(tags)) {
    const piece = shop.pieces.get(tag);
    if (!piece) {
      const out = [...shop.pieces.values()].filter(({ end }) => end === null).map((one) => one.tag);
      return refuse({ code: "no such tag", tag, known: out.sort((a, b) => a - b) });
    }
    pieces.push(piece);
  }
  return pieces;
}

/** The same for work that only a piece still out can have: an ended one refuses. */
export function findPiecesOut(tags: readonly Tag[], shop: Shop): readonly Piece[] | Refused {
  const pieces = findPieces(tags, shop);
  return isRefused(pieces) ? pieces : (refuseEnded(pieces) ?? pieces);
}

/** Why the first ended one of these cannot be worked; null when none is ended. */
export function refuseEnded(pieces: readonly Piece[]): Refused | null {
  for (const { tag, end } of pieces) if (end) return refuse({ code: "ended", tag, how: end.how, at: end.at });
  return null;
}

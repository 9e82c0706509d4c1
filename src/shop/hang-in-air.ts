import type { ShopAir } from "../cure/hanging-air.ts";
import type { Piece, Shop } from "./shop.ts";

/** The shop with every piece in the air it hung in. */
export function hangInAir(shop: Shop, air: ShopAir): Shop {
  const pieces = new Map<number, Piece>();
  for (const [tag, piece] of shop.pieces) pieces.set(tag, { ...piece, air: air.of(piece.hungAt) });
  return { ...shop, pieces, air };
}

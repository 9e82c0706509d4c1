import type { ShopAir } from "../cure/hanging-air.ts";
import type { Piece, Shop } from "./shop.ts";

/**
 * The shop with every piece in the air it hung in, and its coats at the pace they are known to keep.
 *
 * @param factors by coat: how many times its sheet's minutes it has been found to need
 */
export function hangInAir(shop: Shop, air: ShopAir, factors: ReadonlyMap<string, number>): Shop {
  const pace = { factors, touchesCount: shop.settings.touchesCount };
  const pieces = new Map<number, Piece>();
  for (const [tag, piece] of shop.pieces) pieces.set(tag, { ...piece, air: air.of(piece.hungAt), pace });
  return { ...shop, pieces, air };
}

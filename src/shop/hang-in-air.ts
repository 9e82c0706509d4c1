import { SURE } from "../cure/air-ahead.ts";
import { NO_PLACE, ShopAir } from "../cure/hanging-air.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Instant } from "../time/instant.ts";
import { cupsInAir } from "./cups-in-air.ts";
import type { Piece, Shop } from "./shop.ts";

/**
 * The shop with every piece in the air it hung in, its coats at the pace they are known to keep, and
 * cups as they keep in it.
 *
 * @param factors by coat: how many times its sheet's minutes it has been found to need
 */
export function hangInAir(shop: Shop, air: ShopAir, factors: ReadonlyMap<string, number>): Shop {
  const pace = { factors, touchesCount: shop.settings.touchesCount };
  const pieces = new Map<number, Piece>();
  for (const [tag, piece] of shop.pieces) pieces.set(tag, { ...piece, air: air.of(piece.hungAt), pace });
  return { ...shop, pieces, stations: cupsInAir(shop.stations, pieces, air), air };
}

/** The shop as if its air were this one everywhere from a moment on, and stayed so: for what-ifs. */
export function asIfInAir(shop: Shop, air: Air, since: Instant): Shop {
  const byHour = Array.from({ length: 24 }, () => air);
  const ahead = { rests: "stated", byHour, last: null, unsure: SURE } as const;
  const factors = [...shop.pieces.values()][0]?.pace.factors ?? new Map();
  return hangInAir(shop, new ShopAir(new Map([[NO_PLACE, { since, readings: [], ahead }]])), factors);
}

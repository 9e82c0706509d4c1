import type { Journal } from "../journal/journal.ts";
import { hangInAir } from "../shop/hang-in-air.ts";
import type { Shop } from "../shop/shop.ts";
import { airMattersFrom, PATTERN_OVER, shopAir } from "../shop/shop-air.ts";
import { offsetAt } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";

/**
 * The shop with its pieces in the air of their places, as far as it was read by a moment or stated. Where neither is
 * so, nothing is read, and coats go by their sheets.
 */
export async function shopInAir(journal: Journal, shop: Shop, zone: Zone, now: Instant): Promise<Shop> {
  const { settings } = shop;
  if (settings.statedAir.size === 0 && (await journal.newestAir()) === 0) return shop;
  const from = airMattersFrom(shop, now);
  const [rows, hours] = await Promise.all([
    // To the next millisecond, for a span ends before its end.
    journal.air(from, now + 1),
    journal.airByHour(now - PATTERN_OVER),
  ]);
  return hangInAir(shop, shopAir(rows, from, hours, settings, offsetAt(zone, now)));
}

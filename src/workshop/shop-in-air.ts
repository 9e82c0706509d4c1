import { ShopAir } from "../cure/hanging-air.ts";
import type { Journal } from "../journal/journal.ts";
import { cureFactors, TESTS_FROM } from "../learned/cure-tests.ts";
import { hangInAir } from "../shop/hang-in-air.ts";
import type { Shop } from "../shop/shop.ts";
import { airMattersFrom, PATTERN_OVER, shopAir } from "../shop/shop-air.ts";
import { offsetAt } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";

/**
 * The shop with its pieces in the air of their places, as far as it was read by a moment or stated, and its coats as
 * touch tests have found them. Where nothing is known of either, coats go by their sheets.
 */
export async function shopInAir(journal: Journal, shop: Shop, zone: Zone, now: Instant): Promise<Shop> {
  const tests = await journal.cureTests(now - TESTS_FROM);
  const air = await readShopAir(journal, shop, zone, now);
  if (tests.length === 0 && air === null) return shop;
  const factors = new Map([...cureFactors(tests)].map(([coat, { factor }]) => [coat, factor]));
  return hangInAir(shop, air ?? new ShopAir(new Map()), factors);
}

/** Null: the air was never read nor stated. */
async function readShopAir(journal: Journal, shop: Shop, zone: Zone, now: Instant): Promise<ShopAir | null> {
  const { settings } = shop;
  if (settings.statedAir.size === 0 && (await journal.newestAir()) === 0) return null;
  const from = airMattersFrom(shop, now);
  const [rows, hours] = await Promise.all([
    // To the next millisecond, for a span ends before its end.
    journal.air(from, now + 1),
    journal.airByHour(now - PATTERN_OVER),
  ]);
  return shopAir(rows, from, hours, settings, offsetAt(zone, now));
}

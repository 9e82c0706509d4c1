import { ShopAir } from "../cure/hanging-air.ts";
import type { Journal } from "../journal/journal.ts";
import { cureFactors, TESTS_FROM } from "../learned/cure-tests.ts";
import { hangInAir } from "../shop/hang-in-air.ts";
import type { Shop } from "../shop/shop.ts";
import { airMattersFrom, PATTERN_OVER, shopAir } from "../shop/shop-air.ts";
import { offsetAt } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";

/** The air of a shop as it was known last, for one program that reads it again and again: more readings are only added. */
export class AirOfShop {
  readonly #journal: Journal;
  #last: { readonly from: Instant; readonly air: ShopAir } | null = null;

  constructor(journal: Journal) {
    this.#journal = journal;
  }

  /**
   * The shop with its pieces in the air of their places, as far as it was read by a moment or stated, and its coats as
   * touch tests have found them. Where nothing is known of either, coats go by their sheets.
   */
  async hang(shop: Shop, zone: Zone, now: Instant): Promise<Shop> {
    const tests = await this.#journal.cureTests(now - TESTS_FROM);
    const air = await this.#read(shop, zone, now);
    if (tests.length === 0 && air === null) return shop;
    const factors = new Map([...cureFactors(tests)].map(([coat, { factor }]) => [coat, factor]));
    return hangInAir(shop, air ?? new ShopAir(new Map()), factors);
  }

  /** Null: the air was never read nor stated. */
  async #read(shop: Shop, zone: Zone, now: Instant): Promise<ShopAir | null> {
    const { settings } = shop;
    if (settings.statedAir.size === 0 && (await this.#journal.newestAir()) === 0) return null;
    const matters = airMattersFrom(shop, now);
    // From where it was read last, as long as that is before what matters: then it begins the same.
    const from = this.#last !== null && this.#last.from <= matters ? this.#last.from : matters;
    const [rows, hours] = await Promise.all([
      // To the next millisecond, for a span ends before its end.
      this.#journal.air(from, now + 1),
      this.#journal.airByHour(now - PATTERN_OVER),
    ]);
    const air = shopAir(rows, from, hours, settings, offsetAt(zone, now), this.#last?.air ?? null);
    this.#last = { from, air };
    return air;
  }
}

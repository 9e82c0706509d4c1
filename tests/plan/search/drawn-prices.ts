import { chanceFrom } from "../../../src/plan/chance.ts";
import type { PricedWays } from "../../../src/plan/search/priced-ways.ts";

/** Gives hands, hooks and room prices drawn by chance, hour by hour for four days. Ways are still to be found by them. */
export function drawPrices(ways: PricedWays, seed: number): void {
  const chance = chanceFrom(seed);
  for (const scarce of ways.scarce) {
    scarce.clear();
    for (let hour = 0; hour < 96; hour++) scarce.take(60 * hour, 60 * hour + 60, 6 * chance());
    scarce.steer();
    scarce.adjust(chance());
  }
  ways.reprice();
}

import type { Player } from "./play-order.ts";
import { PriceOutlook } from "./price-outlook.ts";
import { RoughPicture } from "./rough-picture.ts";
import { sizeOf } from "./size.ts";

/** At least so many minutes between two starts that are looked at, but no more than so many starts, in so many looks. By trial. */
const OF_MORE = { every: 15, starts: 2000, looks: 40 };
const OF_MANY = { every: 30, starts: 350, looks: 30 };

/** Prices are found for plans that last so many times as long as the one that stands, or as the rough picture. By trial. */
const LONGER = { thanPlan: 1.15, thanPicture: 2 };

/** The rough picture may tell too little: so many times what it tells some plan is taken to cost at most. By trial. */
const DEARER = 2.5;

/** How often the sequence of the rough picture is looked through. */
const SWEEPS = 20;

/**
 * Prices still to be found. How long plans last and what they cost, which that needs, the rough picture tells of pieces taken
 * whole: no good plan need be known. (Where one is, prices found for it lead beams to no better plans.)
 *
 * @param player one with an order that stands
 */
export function pricesFor(player: Player): PriceOutlook {
  const { bench, finishes, cost } = player;
  const { every, starts, looks } = sizeOf(bench.tasks.length) === "many" ? OF_MANY : OF_MORE;
  const last = finishes.reduce((most, finish) => Math.max(most, finish), 0);
  const standing = player.solution();
  player.reset();
  const picture = new RoughPicture(bench);
  picture.improve(SWEEPS);
  const until = Math.min(bench.horizon, LONGER.thanPlan * last, LONGER.thanPicture * picture.last);
  const ceiling = Math.min(cost, DEARER * picture.cost());
  player.adopt(standing);
  const apart = Math.max(every, Math.ceil(bench.calendar.openBefore(until) / starts));
  return new PriceOutlook(bench, { until, ceiling, every: apart, looks });
}

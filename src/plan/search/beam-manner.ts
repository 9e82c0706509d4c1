import type { Minutes } from "../../time/instant.ts";
import type { Bench } from "./bench.ts";
import { sizeOf } from "./size.ts";

/** How a beam goes about. */
export interface Manner {
  /** About how many minutes are planned at a time. */
  readonly stretch: Minutes;
  /** How many times as many plans as are kept in the end go through a stretch task by task; 0: none do. */
  readonly wider: number;
  /** In how many ways each plan made so far goes on by rules at most, and how many in a row that come to nothing new are the last. */
  readonly ways: number;
  readonly stale: number;
  /** In what share of the ways work is ranked by the prices, and some of it held. */
  readonly priced: number;
  readonly held: number;
  /** How often the stretch of each plan that is kept is done again. */
  readonly varied: number;
}

/** By trial. */
const byPrices: Manner = { stretch: 480, wider: 6, ways: 8, stale: 8, priced: 0.5, held: 0.75, varied: 10 };
const byPricesOfMany: Manner = { ...byPrices, stretch: 240, wider: 0, ways: 24, stale: 6, varied: 20 };
const byBoth: Manner = { ...byPricesOfMany, stretch: 480, stale: 3, priced: 0.2, held: 0, varied: 12 };

/** @param withPicture the mean of prices and rough picture foretells, not the prices alone */
export function mannerFor({ tasks }: Bench, withPicture: boolean): Manner {
  if (withPicture) return byBoth;
  return sizeOf(tasks.length) === "many" ? byPricesOfMany : byPrices;
}

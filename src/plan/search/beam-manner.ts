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
const ofMore: Manner = { stretch: 480, wider: 6, ways: 8, stale: 8, priced: 0.5, held: 0.75, varied: 10 };
const ofMany: Manner = { ...ofMore, wider: 0, ways: 20, stale: 6, varied: 17 };

export function mannerFor({ tasks }: Bench): Manner {
  return sizeOf(tasks.length) === "many" ? ofMany : ofMore;
}

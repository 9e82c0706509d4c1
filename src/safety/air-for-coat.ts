import type { KnownAir } from "../cure/air-line.ts";
import { DEW_MARGIN, dewMargin } from "../cure/fit-air.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Coat } from "../process/coat.ts";
import type { Shop } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";

/** What makes air unfit to lay a coat in. */
export type Unfit =
  | { readonly is: "too cold"; readonly celsius: number; readonly lowestCelsius: number }
  | { readonly is: "dew"; readonly celsius: number; readonly dewPoint: number; readonly wanted: number };

/** How close air that changes is looked at, and how far. */
const STEP = 15 * MINUTE;
const FARTHEST = 48 * 60 * MINUTE;

/**
 * Whether the shop's air is unfit to lay a coat in at a moment; null: it is fit, or nobody knows. A piece is taken to be
 * as warm as the air round it: one just brought in from the cold is colder, and only the maker knows.
 */
export function unfitAir(coat: Pick<Coat, "lowestCelsius">, shop: Shop, at: Instant): Unfit | null {
  const air = shop.air.at(NO_PLACE, at);
  return air === null ? null : judgeAir(coat, air, shop.settings.dewMargin ?? DEW_MARGIN);
}

function judgeAir(
  { lowestCelsius }: Pick<Coat, "lowestCelsius">,
  air: KnownAir,
  wanted: number,
): Unfit | null {
  const { celsius } = air;
  if (lowestCelsius !== null && celsius < lowestCelsius) return { is: "too cold", celsius, lowestCelsius };
  const { dewPoint, isFit } = dewMargin(air, celsius, wanted);
  return isFit ? null : { is: "dew", celsius, dewPoint, wanted };
}

/**
 * When air that is unfit for a coat at a moment is expected to be fit again, to a quarter of an hour; null: not within two
 * days. What `now` refuses and the planner waits for alike.
 */
export function fitAgainAt(coat: Pick<Coat, "lowestCelsius">, shop: Shop, from: Instant): Instant | null {
  for (let at = from + STEP; at <= from + FARTHEST; at += STEP) {
    if (unfitAir(coat, shop, at) === null) return at;
  }
  return null;
}

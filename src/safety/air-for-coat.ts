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
 * The spans from a moment on in which the air is expected to be unfit for a coat, to a quarter of an hour; one that does
 * not end within two days has no end. What `now` refuses and what the planner leaves out are these alone.
 */
export function unfitSpans(
  coat: Pick<Coat, "lowestCelsius">,
  shop: Shop,
  from: Instant,
  until: Instant = from + FARTHEST,
): readonly { readonly from: Instant; readonly until: Instant | null }[] {
  if (shop.air.lines.size === 0) return [];
  const spans: { from: Instant; until: Instant | null }[] = [];
  for (let at = from; at <= until; at += STEP) {
    const last = spans.at(-1);
    const isOpen = last !== undefined && last.until === null;
    const isUnfit = unfitAir(coat, shop, at) !== null;
    if (isUnfit && !isOpen) spans.push({ from: at, until: null });
    if (!isUnfit && isOpen) last.until = at;
  }
  return spans;
}

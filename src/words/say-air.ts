import type { KnownAir } from "../cure/air-line.ts";
import { dewPoint } from "../cure/humid-air.ts";
import type { Tag } from "../journal/event.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import type { Air } from "../process/quantity-form.ts";
import type { ColdAhead } from "../shop/cold-ahead.ts";
import { MINUTE } from "../time/instant.ts";
import { sayTags } from "./say-list.ts";
import { sayClock } from "./say-time.ts";
import { sayReading } from "./say-units.ts";
import type { Speech } from "./speech.ts";

const RESTS: Readonly<Record<KnownAir["rests"], string>> = {
  reading: "as read",
  readings: "between readings",
  "daily pattern": "by the daily pattern of the last two weeks",
  stated: "as you stated it",
  "last reading": "as last read",
};

/** Air in the maker's units. `sayAir({ celsius: 16.5, humidityPercent: 58 }, metric) === "16.5 °C 58 %"` */
export function sayAir({ celsius, humidityPercent }: Air, speech: Speech): string {
  return `${sayReading(celsius, speech)} ${Math.round(humidityPercent)} %`;
}

/** A reading this old may not be the air of now any more: it is told with its time. Our own, no source. */
const OLD = 60 * MINUTE;

/**
 * The shop's air for a head line: one text, or none where it is not known; what is not read is said to be expected, and
 * what was read long ago when that was.
 *
 * @example sayShopAir({ air }, speech) // ["16.5 °C 58 % at 10:00"]
 */
export function sayShopAir({ air }: Pick<NowAnswer, "air">, speech: Speech): readonly string[] {
  if (air === null) return [];
  const isRead = air.rests === "reading" || air.rests === "readings" || air.rests === "last reading";
  const old =
    air.readAt !== undefined && speech.now - air.readAt > OLD ? ` at ${sayClock(air.readAt, speech)}` : "";
  return [`${sayAir(air, speech)}${isRead ? old : " expected"}`];
}

/** Air with its dew point and what it is known by. */
export function sayKnownAir(air: KnownAir, speech: Speech): string {
  return `${sayAir(air, speech)}, dew point ${sayReading(dewPoint(air), speech)}, ${RESTS[air.rests]}${air.readAt === undefined ? "" : ` ${sayClock(air.readAt, speech)}`}`;
}

/**
 * What the cold ahead does to coats, and where they would do better: a line for each thing said, with all it is said of.
 *
 * @example "14 and 15: falls to 8 °C at 03:00, and brushing varnish does not cure below 10 °C: dry-hard Fri 11:20 (predicted);
 * the warm box at 27 °C would have it so by 06:00"
 */
export function sayColdAhead(colds: readonly ColdAhead[], speech: Speech): string[] {
  const tags = new Map<string, Tag[]>();
  for (const cold of colds) {
    const said = sayCold(cold, speech);
    tags.set(said, [...(tags.get(said) ?? []), cold.tag]);
  }
  return [...tags].map(([said, those]) => `${sayTags(those)}: ${said}`);
}

function sayCold(cold: ColdAhead, speech: Speech): string {
  const { coat, lowestCelsius, coldest, hard, better } = cold;
  const degrees = sayReading(coldest.celsius, speech);
  const falls =
    coldest.at <= speech.now
      ? `hangs at ${degrees}`
      : `falls to ${degrees} at ${sayClock(coldest.at, speech)}`;
  const lowest = `${coat} does not cure below ${sayReading(lowestCelsius, speech)}`;
  const when =
    hard === null ? "as far as can be seen never dry-hard" : `dry-hard ${sayClock(hard, speech)} (predicted)`;
  const elsewhere =
    better === null
      ? ""
      : `; the ${better.place} at ${sayReading(better.celsius, speech)} would have it so by ${sayClock(better.hard, speech)}`;
  return `${falls}, and ${lowest}: ${when}${elsewhere}`;
}

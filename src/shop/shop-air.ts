import { type AirAhead, dailyPattern, statedDay, staysAsRead } from "../cure/air-ahead.ts";
import { type AirLine, sortReadings } from "../cure/air-line.ts";
import { NO_PLACE, ShopAir } from "../cure/hanging-air.ts";
import type { AirHour, AirRow } from "../journal/air.ts";
import type { Instant } from "../time/instant.ts";
import { lastHang } from "./passes.ts";
import type { Settings, Shop, StatedAir } from "./shop.ts";

/** A coat older than that is through, or nobody waits for it: 30 days. Its cure goes by the sheet. */
const OLDEST = 30 * 24 * 3_600_000;

/** Over how long the daily pattern is taken: two weeks, so that a turn of the weather shows. */
export const PATTERN_OVER = 14 * 24 * 3_600_000;

/**
 * From when on readings of the air matter to what hangs now: a day before the oldest coat that may still be curing, so
 * that a reading before it is among them.
 */
export function airMattersFrom(shop: Shop, now: Instant): Instant {
  let oldest = now;
  for (const piece of shop.pieces.values()) {
    for (const work of piece.work.values()) {
      const hung = lastHang(work)?.hungAt ?? now;
      if (hung < oldest && hung > now - OLDEST) oldest = hung;
    }
  }
  return oldest - 24 * 3_600_000;
}

/**
 * The air of a shop from what was read, and ahead from the daily pattern of what was read, else as the maker stated it,
 * else as last read.
 *
 * @param rows readings that count, by moment
 * @param from when the readings begin, `airMattersFrom`
 * @param hours the mean air by hour of the day over the last two weeks
 * @param offset minutes by which the shop's clock is ahead of UTC
 * @param before the air as it was known until now, used up: more readings are only added to it
 */
export function shopAir(
  rows: readonly AirRow[],
  from: Instant,
  hours: readonly AirHour[],
  { statedAir }: Pick<Settings, "statedAir">,
  offset: number,
  before: ShopAir | null = null,
): ShopAir {
  const read = new Map<string | null, AirRow[]>();
  for (const row of rows) {
    const here = read.get(row.place);
    if (here === undefined) read.set(row.place, [row]);
    else here.push(row);
  }
  const lines = new Map<string, AirLine>();
  for (const place of new Set([...read.keys(), ...statedAir.keys()])) {
    const readings = sortReadings(read.get(place) ?? []);
    const last = readings.at(-1) ?? null;
    const stated = statedAir.get(place) ?? null;
    const ahead =
      dailyPattern(
        hours.filter((hour) => hour.place === place),
        last,
      ) ?? without(stated, last, offset);
    if (ahead === null) continue;
    const first = Math.min(
      readings[0]?.at ?? Number.POSITIVE_INFINITY,
      stated?.at ?? Number.POSITIVE_INFINITY,
    );
    // A daily pattern tells of the days before, too; one reading of today says nothing of yesterday.
    const since = ahead.rests === "daily pattern" ? Math.min(first, from) : first;
    lines.set(place ?? NO_PLACE, { since, readings, ahead });
  }
  return new ShopAir(lines, before);
}

/** How the air goes on where no pattern is known. */
function without(stated: StatedAir | null, last: AirAhead["last"], offset: number): AirAhead | null {
  if (stated !== null) return { ...statedDay(stated, offset), last };
  return last === null ? null : staysAsRead(last);
}

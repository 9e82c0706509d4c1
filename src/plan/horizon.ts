import type { BenchHours } from "../time/bench-hours.ts";
import { type Instant, type Minutes, minutesBetween } from "../time/instant.ts";
import { nextSession, sessionAt } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";

const DAY: Minutes = 24 * 60;

/**
 * How far ahead is looked so that `least` minutes lie beyond the days for which the bench stays shut from now on: a
 * maker who goes away for three weeks is still told what comes after.
 *
 * @example horizonFrom(hours, zone, now, 14 * 24 * 60) // 28 days in minutes, on the eve of 14 days away
 */
export function horizonFrom(hours: BenchHours, zone: Zone, now: Instant, least: Minutes): Minutes {
  if (sessionAt(hours, zone, now) !== null) return least;
  const next = nextSession(hours, zone, now);
  const shut = next === null ? 0 : Math.floor(minutesBetween(now, next.opens) / DAY);
  return least + shut * DAY;
}

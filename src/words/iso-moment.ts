import { offsetAt } from "../time/civil.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";

/**
 * A moment for other programs: ISO 8601 with the offset of the shop's zone, to the second (to the millisecond
 * where it has some).
 *
 * @example isoMoment(0, dublin) // "1970-01-01T01:00:00+01:00"
 */
export function isoMoment(at: Instant, zone: Zone): string {
  const offset = offsetAt(zone, at);
  const shown = new Date(at + offset * MINUTE).toISOString().slice(0, -1);
  const sign = offset < 0 ? "-" : "+";
  const hours = String(Math.floor(Math.abs(offset) / 60)).padStart(2, "0");
  const minutes = String(Math.abs(offset) % 60).padStart(2, "0");
  return `${shown.replace(/\.000$/, "")}${sign}${hours}:${minutes}`;
}

import { tzOffset } from "@date-fns/tz/tzOffset";
import { tzScan } from "@date-fns/tz/tzScan";
import { type Instant, MINUTE } from "./instant.ts";
import type { Zone } from "./zone.ts";

const FIRST = Date.UTC(2000, 0, 1);
const LAST = Date.UTC(2061, 0, 1);
const HOUR = 60 * MINUTE;

/**
 * The table of a zone's changes from 2000 to 2060, from the time-zone database inside Node. Null: no such
 * zone. The only file that starts Intl (10 to 24 ms, and some 40 ms for the scan): keep what it answers.
 */
export function readZone(name: string): Zone | null {
  const offsetMinutes = tzOffset(name, new Date(FIRST));
  if (Number.isNaN(offsetMinutes)) return null;
  const changes = tzScan(name, { start: new Date(FIRST), end: new Date(LAST) });
  return {
    name,
    offsetMinutes,
    changes: changes.map((change) => ({
      at: exactMoment(name, change.date.getTime(), change.offset),
      offsetMinutes: change.offset,
    })),
  };
}

/**
 * The scan goes by whole hours of UTC and so finds a change up to an hour late (Lord Howe Island and Chatham
 * change at other minutes): the minute is found by halving.
 */
function exactMoment(name: string, found: Instant, offset: number): Instant {
  let before = found - HOUR;
  let at = found;
  while (at - before > MINUTE) {
    const middle = before + Math.floor((at - before) / MINUTE / 2) * MINUTE;
    if (tzOffset(name, new Date(middle)) === offset) at = middle;
    else before = middle;
  }
  return at;
}

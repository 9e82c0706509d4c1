import { tzOffset } from "@date-fns/tz/tzOffset";
import { type Instant, MINUTE, type Minutes } from "./instant.ts";
import type { Zone } from "./zone.ts";

const FIRST = Date.UTC(2000, 0, 1);
const LAST = Date.UTC(2061, 0, 1);
const WEEK = 10_080 * MINUTE;

/**
 * The table of a zone's changes from 2000 to 2060, from the time-zone database inside Node. Null: no such
 * zone. The only file that starts Intl (10 to 24 ms, and as much again for the table): keep what it answers.
 *
 * It looks once a week and halves to the minute. A library's scan by months and hours misses a summer time
 * put off for some weeks (Cairo in September 2010, Gaza in October 2041), and finds Lord Howe Island's
 * changes, which fall on the half hour of UTC, half an hour late.
 */
export function readZone(name: string): Zone | null {
  const offsetMinutes = tzOffset(name, new Date(FIRST));
  if (Number.isNaN(offsetMinutes)) return null;
  const changes: { at: Instant; offsetMinutes: Minutes }[] = [];
  let offset = offsetMinutes;
  for (let at = FIRST + WEEK; at <= LAST; at += WEEK) {
    const found = tzOffset(name, new Date(at));
    if (found === offset) continue;
    changes.push({ at: momentOfChange(name, at - WEEK, at, found), offsetMinutes: found });
    offset = found;
  }
  return { name, offsetMinutes, changes };
}

/** The first minute of the new offset, which holds at `to` and not yet at `from`. */
function momentOfChange(name: string, from: Instant, to: Instant, offset: Minutes): Instant {
  let before = from;
  let at = to;
  while (at - before > MINUTE) {
    const middle = before + Math.floor((at - before) / MINUTE / 2) * MINUTE;
    if (tzOffset(name, new Date(middle)) === offset) at = middle;
    else before = middle;
  }
  return at;
}

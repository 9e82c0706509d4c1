import type { CivilDate, Instant } from "../time/instant.ts";
import type { EventBody } from "./event.ts";
import { FOR_EVER } from "./tables.ts";

/** A day ends in every zone on earth by then: 24 h of its own, and 12 h for the zones west of Greenwich. */
const longestDayMilliseconds = 36 * 3_600_000;

/**
 * Until when an event may matter although it is old; null: it does not by itself.
 *
 * @example the hours of 2026-03-28 reach to 2026-03-29T12:00Z
 */
export function reachOf(body: EventBody): Instant | null {
  switch (body.kind) {
    case "amended":
      return body.time;
    case "clock":
      return FOR_EVER;
    case "settled":
      switch (body.setting.of) {
        case "day":
          return endOf(body.setting.date);
        case "away":
          return endOf(body.setting.to);
        default:
          return FOR_EVER;
      }
    default:
      return null;
  }
}

function endOf(date: CivilDate): Instant {
  return Date.parse(`${date}T00:00Z`) + longestDayMilliseconds;
}

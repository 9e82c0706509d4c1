import { expect, test } from "vitest";
import { horizonFrom } from "../../src/plan/horizon.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

const DAY = 24 * 60;
const away = { ...eveningHours, away: [{ from: "2026-03-30", to: "2026-04-12" }] };
const never = { weekly: [{ from: "2026-01-01", hours: [[], [], [], [], [], [], []] }], days: {}, away: [] };

test.each([
  ["while the bench is open", eveningHours, "Mon 18:30", 14],
  ["overnight, which is no day of it", eveningHours, "Mon 22:00", 14],
  // Saturday 16:00 to Monday 18:00 is 2 days and an hour (the clocks go forward).
  ["over a Sunday", eveningHours, "Sat 16:00", 16],
  // Sunday 20:00 to Monday 13 April 18:00 is 14 days and 22 hours.
  ["before two weeks away", away, "Sun 20:00", 28],
  ["where it never opens again", never, "Mon 18:00", 14],
] as const)("14 days lie beyond the days shut %s", (_, hours, when, days) => {
  expect(horizonFrom(hours, dublin, at(when), 14 * DAY)).toBe(days * DAY);
});

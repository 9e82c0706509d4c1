import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addDays,
  daysBetween,
  instantOf,
  isCivilDate,
  localTime,
  minuteOfDay,
  offsetAt,
  weekdayOf,
} from "../../src/time/civil.ts";
import { MINUTE, minutesBetween } from "../../src/time/instant.ts";
import { DUBLIN, dublin, NAMES_TO_TRY, zoneNamed } from "./zones-to-try.ts";

const zones = NAMES_TO_TRY.map(zoneNamed);
const anyZone = fc.constantFrom(...zones);
const anyMoment = fc
  .integer({ min: Date.UTC(2024, 0, 1) / MINUTE, max: Date.UTC(2036, 0, 1) / MINUTE })
  .map((minute) => minute * MINUTE);

describe("the wall clock", () => {
  test("shows the local reading, its date and weekday", () => {
    // 29 March 2026 was a Sunday; 01:30 UTC is half past two in Irish summer time.
    expect(localTime(DUBLIN, Date.UTC(2026, 2, 29, 1, 30))).toEqual({
      date: "2026-03-29",
      hour: 2,
      minute: 30,
      weekday: 7,
    });
  });

  test("a reading in the gap of spring moves forward by the gap", () => {
    // 01:00 to 02:00 is not shown that night: 01:30 is read as 02:30, which is 01:30 UTC.
    expect(dublin("2026-03-29", "01:30")).toBe(Date.UTC(2026, 2, 29, 1, 30));
    expect(localTime(DUBLIN, dublin("2026-03-29", "01:30"))).toMatchObject({ hour: 2, minute: 30 });
  });

  test("a reading shown twice in autumn is the first", () => {
    // 01:30 summer time is 00:30 UTC; the second 01:30 is 01:30 UTC.
    expect(dublin("2026-10-25", "01:30")).toBe(Date.UTC(2026, 9, 25, 0, 30));
  });

  test("minutes past midnight run on by the next day's clock", () => {
    // 26:00 of Saturday is 2:00 of Sunday, in summer time since 1:00.
    expect(instantOf(DUBLIN, "2026-03-28", 26 * 60)).toBe(Date.UTC(2026, 2, 29, 1, 0));
  });

  test("a day the clocks of Apia left out is read as the next", () => {
    // Samoa went from 29 to 31 December 2011: noon of the 30th is read as noon of the 31st.
    const apia = zoneNamed("Pacific/Apia");
    expect(localTime(apia, instantOf(apia, "2011-12-30", 720))).toMatchObject({
      date: "2011-12-31",
      hour: 12,
    });
  });

  test("what a clock shows is read back, but for the second showing of an hour in autumn", () => {
    fc.assert(
      fc.property(anyZone, anyMoment, (zone, instant) => {
        const local = localTime(zone, instant);
        const back = instantOf(zone, local.date, minuteOfDay(local));
        expect(localTime(zone, back)).toEqual(local);
        expect(back).toBeLessThanOrEqual(instant);
        if (back < instant) expect(offsetAt(zone, back)).toBeGreaterThan(offsetAt(zone, instant));
      }),
      { numRuns: 5_000 },
    );
  });
});

describe("a countdown", () => {
  test("is the same in every zone and right over each clock change of 2024 to 2035", () => {
    let crossed = 0;
    for (const zone of zones) {
      const changes = zone.changes.filter(
        ({ at }) => at >= Date.UTC(2024, 0, 1) && at < Date.UTC(2036, 0, 1),
      );
      for (const { at } of changes) {
        crossed += 1;
        // A coat hung four hours before the change, by the clock there, that opens eight hours later.
        const hung = localTime(zone, at - 240 * MINUTE);
        const opens = localTime(zone, at + 240 * MINUTE);
        const wait = minutesBetween(
          instantOf(zone, hung.date, minuteOfDay(hung)),
          instantOf(zone, opens.date, minuteOfDay(opens)),
        );
        expect(wait).toBe(480);
        for (const other of zones) {
          const [a, b] = [localTime(other, at - 240 * MINUTE), localTime(other, at + 240 * MINUTE)];
          const shown = daysBetween(a.date, b.date) * 1440 + minuteOfDay(b) - minuteOfDay(a);
          const shift = offsetAt(other, at + 240 * MINUTE) - offsetAt(other, at - 240 * MINUTE);
          expect(shown - shift).toBe(480);
        }
      }
    }
    // Two a year for twelve years in at least twelve of the zones.
    expect(crossed).toBeGreaterThanOrEqual(288);
  });

  test("rounds down to whole minutes", () => {
    expect(minutesBetween(0, 119_999)).toBe(1);
    expect(minutesBetween(0, -1)).toBe(-1);
  });
});

describe("dates", () => {
  test("are counted over months, leap days and years", () => {
    expect(addDays("2026-02-28", 1)).toBe("2026-03-01");
    expect(addDays("2028-02-28", 1)).toBe("2028-02-29");
    expect(addDays("2027-01-01", -1)).toBe("2026-12-31");
    // 2026: January 31, February 28, March 1..28 are 27 more.
    expect(daysBetween("2026-01-01", "2026-03-28")).toBe(86);
  });

  test("have the weekday of ISO 8601, Monday 1 to Sunday 7", () => {
    expect([weekdayOf("2026-03-23"), weekdayOf("2026-03-29"), weekdayOf("1969-12-31")]).toEqual([1, 7, 3]);
  });

  test("that are not in the calendar are told apart", () => {
    expect(isCivilDate("2028-02-29")).toBe(true);
    expect(["2026-02-29", "2026-13-01", "2026-3-1", "3 May", ""].map(isCivilDate)).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
    expect(() => addDays("3 May", 1)).toThrow(RangeError);
  });
});

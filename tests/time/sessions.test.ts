import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BenchHours, DayHours, WeeklyHours } from "../../src/time/bench-hours.ts";
import { addDays, instantOf, localTime, minuteOfDay, offsetAt } from "../../src/time/civil.ts";
import { MINUTE, minutesBetween } from "../../src/time/instant.ts";
import {
  ASSUMED_HOURS,
  hoursOn,
  nextSession,
  sessionAt,
  sessionsBetween,
  weeklyOn,
} from "../../src/time/sessions.ts";
import { DUBLIN, dublin, NAMES_TO_TRY, zoneNamed } from "./zones-to-try.ts";

function hoursWith(change: Partial<BenchHours>): BenchHours {
  return { ...ASSUMED_HOURS, ...change };
}

const everyDay = (...day: DayHours[]): WeeklyHours => Array.from({ length: 7 }, () => day);

describe("the sessions of a week", () => {
  test("weekdays 18 to 21 and Saturday 9 to 16 are 22 hours", () => {
    const sessions = sessionsBetween(
      ASSUMED_HOURS,
      DUBLIN,
      dublin("2026-03-23", "0:00"),
      dublin("2026-03-30", "0:00"),
    );
    expect(sessions).toHaveLength(6);
    expect(sessions[0]).toEqual({
      opens: dublin("2026-03-23", "18:00"),
      closes: dublin("2026-03-23", "21:00"),
    });
    // 5 x 3 h + 7 h
    expect(sessions.reduce((sum, { opens, closes }) => sum + minutesBetween(opens, closes), 0)).toBe(22 * 60);
  });

  test("after the clocks went forward Monday still opens at 18:00, 17:00 UTC", () => {
    expect(nextSession(ASSUMED_HOURS, DUBLIN, dublin("2026-03-29", "2:10"))?.opens).toBe(
      Date.UTC(2026, 2, 30, 17, 0),
    );
  });

  test("a session is open from its first moment and shut at its last", () => {
    const at = (clock: string) => sessionAt(ASSUMED_HOURS, DUBLIN, dublin("2026-03-23", clock));
    expect(at("17:59")).toBeNull();
    expect(at("18:00")).not.toBeNull();
    expect(at("20:59")).not.toBeNull();
    expect(at("21:00")).toBeNull();
  });

  test("a pattern holds from its date on, and the weeks before keep theirs", () => {
    const mornings = everyDay({ opens: 480, closes: 600 });
    const hours = hoursWith({ weekly: [...ASSUMED_HOURS.weekly, { from: "2026-03-25", hours: mornings }] });
    expect(hoursOn(hours, "2026-03-24")).toEqual([{ opens: 1080, closes: 1260 }]);
    expect(hoursOn(hours, "2026-03-25")).toEqual([{ opens: 480, closes: 600 }]);
  });

  test("before the first pattern said, the assumed one holds", () => {
    const hours = hoursWith({ weekly: [{ from: "2026-03-25", hours: everyDay() }] });
    expect(weeklyOn(hours, "2026-03-24")).toBe(weeklyOn(ASSUMED_HOURS, "2026-03-24"));
    expect(hoursOn(hours, "2026-03-25")).toEqual([]);
  });

  test("of two patterns from the same date the later said holds", () => {
    const [first, second] = [everyDay({ opens: 480, closes: 600 }), everyDay({ opens: 60, closes: 90 })];
    const weekly = [
      { from: "2026-03-25", hours: first },
      { from: "2026-03-25", hours: second },
    ];
    expect(weeklyOn(hoursWith({ weekly }), "2026-03-26")).toBe(second);
  });

  test("a day's own hours go before the pattern, and days away before both", () => {
    const hours = hoursWith({
      days: { "2026-03-26": [{ opens: 1080, closes: 1335 }], "2026-04-01": [{ opens: 540, closes: 600 }] },
      away: [{ from: "2026-03-30", to: "2026-04-12" }],
    });
    expect(sessionAt(hours, DUBLIN, dublin("2026-03-26", "22:14"))?.closes).toBe(
      dublin("2026-03-26", "22:15"),
    );
    expect(hoursOn(hours, "2026-04-01")).toEqual([]);
    // Away to Sunday 12 April: the bench opens again on Monday.
    expect(nextSession(hours, DUBLIN, dublin("2026-03-29", "20:00"))?.opens).toBe(
      dublin("2026-04-13", "18:00"),
    );
  });

  test("a bench that never opens has no next session", () => {
    const hours = hoursWith({ weekly: [{ from: "1970-01-01", hours: everyDay() }] });
    expect(nextSession(hours, DUBLIN, dublin("2026-03-23", "18:00"))).toBeNull();
  });
});

describe("a session past midnight", () => {
  const nights = hoursWith({
    weekly: [{ from: "1970-01-01", hours: everyDay({ opens: 22 * 60, closes: 26 * 60 }) }],
  });

  test("belongs to the day it opens on, and runs on when that day is the last at the bench", () => {
    const hours = { ...nights, away: [{ from: "2026-03-24", to: "2026-03-30" }] };
    expect(sessionAt(hours, DUBLIN, dublin("2026-03-24", "1:59"))).toEqual({
      opens: dublin("2026-03-23", "22:00"),
      closes: dublin("2026-03-24", "2:00"),
    });
    expect(sessionAt(hours, DUBLIN, dublin("2026-03-24", "2:00"))).toBeNull();
  });

  test("is an hour shorter when the clocks go forward in it, an hour longer when they go back", () => {
    const length = (moment: number) => {
      const session = sessionAt(nights, DUBLIN, moment);
      return session === null ? null : minutesBetween(session.opens, session.closes);
    };
    expect(length(dublin("2026-03-28", "23:00"))).toBe(3 * 60);
    expect(length(dublin("2026-10-24", "23:00"))).toBe(5 * 60);
    expect(length(dublin("2026-06-01", "23:00"))).toBe(4 * 60);
  });

  test("ends where the next day's own hours begin sooner", () => {
    const hours = { ...nights, days: { "2026-03-24": [{ opens: 60, closes: 180 }] } };
    const sessions = sessionsBetween(
      hours,
      DUBLIN,
      dublin("2026-03-23", "22:00"),
      dublin("2026-03-24", "3:00"),
    );
    expect(sessions).toEqual([
      { opens: dublin("2026-03-23", "22:00"), closes: dublin("2026-03-24", "1:00") },
      { opens: dublin("2026-03-24", "1:00"), closes: dublin("2026-03-24", "3:00") },
    ]);
    expect(nextSession(hours, DUBLIN, dublin("2026-03-23", "21:00"))).toEqual(sessions[0]);
  });
});

describe("stretches of one day", () => {
  test("that touch or overlap are one session", () => {
    const day = [
      { opens: 780, closes: 900 },
      { opens: 540, closes: 720 },
      { opens: 720, closes: 800 },
    ];
    const hours = hoursWith({ days: { "2026-03-28": day } });
    expect(
      sessionsBetween(hours, DUBLIN, dublin("2026-03-28", "0:00"), dublin("2026-03-29", "0:00")),
    ).toEqual([{ opens: dublin("2026-03-28", "9:00"), closes: dublin("2026-03-28", "15:00") }]);
  });

  test("wholly in the hour that is not shown have no length and fall out, or keep what is left", () => {
    // 1:00 to 2:00 is read as 2:00 to 2:00; 1:15 to 1:45 as 2:15 to 2:45.
    const inGap = (opens: number, closes: number) =>
      sessionsBetween(
        hoursWith({ days: { "2026-03-29": [{ opens, closes }] } }),
        DUBLIN,
        dublin("2026-03-29", "0:00"),
        dublin("2026-03-30", "0:00"),
      );
    expect(inGap(60, 120)).toEqual([]);
    expect(inGap(75, 105)).toEqual([
      { opens: dublin("2026-03-29", "2:15"), closes: dublin("2026-03-29", "2:45") },
    ]);
  });
});

describe("whatever the hours and the zone", () => {
  const zones = NAMES_TO_TRY.map(zoneNamed);
  const aDay = fc
    .uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 0, maxLength: 4 })
    .map((minutes) => {
      const sorted = minutes.toSorted((a, b) => a - b);
      const closes = sorted.length % 2 === 0 ? [] : [(sorted[0] ?? 0) + 1440];
      const ends = [...sorted, ...closes];
      return Array.from({ length: ends.length / 2 }, (_, index) => ({
        opens: ends[2 * index] ?? 0,
        closes: ends[2 * index + 1] ?? 0,
      }));
    });
  const aStart = fc.integer({ min: 0, max: 12 * 365 }).map((days) => addDays("2024-01-01", days));
  const aShop = fc.record({
    zone: fc.constantFrom(...zones),
    weekly: fc.array(aDay, { minLength: 7, maxLength: 7 }),
    start: aStart,
    days: fc.integer({ min: 1, max: 21 }),
  });

  test("sessions are in order, disjoint, and begin and end when the pattern says", () => {
    fc.assert(
      fc.property(aShop, ({ zone, weekly, start, days }) => {
        const hours = hoursWith({ weekly: [{ from: "2000-01-01", hours: weekly }] });
        const [from, to] = [instantOf(zone, start, 0), instantOf(zone, addDays(start, days), 0)];
        const sessions = sessionsBetween(hours, zone, from, to);
        const after = nextSession(hours, zone, (sessions.at(-1)?.closes ?? to) - 1);
        const opensNext = (index: number) =>
          sessions[index + 1]?.opens ?? after?.opens ?? Number.POSITIVE_INFINITY;
        for (const [index, { opens, closes }] of sessions.entries()) {
          expect(opens).toBeLessThan(closes);
          expect(closes).toBeLessThanOrEqual(opensNext(index));
          expect(closes > from && opens < to).toBe(true);
          const local = localTime(zone, opens);
          const stretch = weekly[local.weekday - 1]?.find(
            (each) => instantOf(zone, local.date, each.opens) === opens,
          );
          expect(stretch).toBeDefined();
          // Readings differ from the pattern only in the gap of a change: then both sides of it are near.
          if (offsetAt(zone, opens - 180 * MINUTE) === offsetAt(zone, opens))
            expect(minuteOfDay(local)).toBe(stretch?.opens);
          const ending = localTime(zone, closes);
          if (closes < opensNext(index) && offsetAt(zone, closes - 180 * MINUTE) === offsetAt(zone, closes))
            expect(minuteOfDay(ending) % 1440).toBe((stretch?.closes ?? 0) % 1440);
        }
      }),
      { numRuns: 400 },
    );
  });

  test("sessionAt and nextSession find the very sessions of the list", () => {
    fc.assert(
      fc.property(aShop, fc.integer({ min: 0, max: 1439 }), ({ zone, weekly, start, days }, minute) => {
        const hours = hoursWith({ weekly: [{ from: "2000-01-01", hours: weekly }] });
        const at = instantOf(zone, start, minute);
        const sessions = sessionsBetween(hours, zone, at, instantOf(zone, addDays(start, days + 8), 0));
        expect(sessionAt(hours, zone, at)).toEqual(
          sessions.find(({ opens, closes }) => opens <= at && at < closes) ?? null,
        );
        expect(nextSession(hours, zone, at)).toEqual(sessions.find(({ opens }) => opens > at) ?? null);
      }),
      { numRuns: 400 },
    );
  });
});

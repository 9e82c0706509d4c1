import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DayHours } from "../../src/time/bench-hours.ts";
import { formatDayHours, formatWeeklyHours } from "../../src/time/format-hours.ts";
import { readDayHours, readNamedHours, readWeekdays, readWeeklyHours } from "../../src/time/read-hours.ts";

const evening = [{ opens: 1080, closes: 1260 }]; // 18 x 60, 21 x 60
const saturday = [{ opens: 540, closes: 960 }]; // 9 x 60, 16 x 60
const none: DayHours[] = [];

describe("a weekly pattern in forgiving words", () => {
  const week = [evening, evening, evening, evening, evening, saturday, none];
  test.each([
    ["weekdays 18-21, Sat 9-16", week],
    ["Weekdays 18:00-21:00; Saturday 9.00-16.00", week],
    ["weekdays 6pm-9pm Sat 9am-4pm", week],
    ["Mon-Fri 18 to 21 and Sat 9..16", week],
    ["Mon, Tue, Wed, Thu, Fri 18–21, Saturdays 9 - 16", week],
    ["mon tue wed thu fri: 18-21, sat: 9-16, sun: closed", week],
    ["daily 18-21, Sat 9-16, Sun off", week],
    ["Fri-Mon 9-16", [saturday, none, none, none, saturday, saturday, saturday]],
    [
      "Mon Wed 18:00-21:30",
      [[{ opens: 1080, closes: 1290 }], none, [{ opens: 1080, closes: 1290 }], none, none, none, none],
    ],
    ["every day 9-16", Array.from({ length: 7 }, () => saturday)],
    ["weekends 9-16", [none, none, none, none, none, saturday, saturday]],
    ["daily closed", Array.from({ length: 7 }, () => none)],
    [
      "Sat 9-12, 13-16", // the comma goes on with Saturday
      [
        none,
        none,
        none,
        none,
        none,
        [
          { opens: 540, closes: 720 },
          { opens: 780, closes: 960 },
        ],
        none,
      ],
    ],
    ["Fri 22-2", [none, none, none, none, [{ opens: 1320, closes: 1560 }], none, none]], // 24 + 2 is 26 h
    ["Fri 18-24", [none, none, none, none, [{ opens: 1080, closes: 1440 }], none, none]],
  ])("%s", (text, weekly) => {
    expect(readWeeklyHours(text)).toEqual({ weekly });
  });

  test.each([
    ["", "No hours are said; write it like weekdays 18-21, Sat 9-16."],
    ["18-21", '"18-21" stands before any day; write it like weekdays 18-21, Sat 9-16.'],
    ["weekdays", '"weekdays" ends with a day that has no hours; write it like weekdays 18-21, Sat 9-16.'],
    [
      "Mon 18-21, Tue",
      '"Mon 18-21, Tue" ends with a day that has no hours; write it like weekdays 18-21, Sat 9-16.',
    ],
    ["weekdays evenings", '"evenings" is neither a day nor hours; write it like weekdays 18-21, Sat 9-16.'],
    ["Mon 18", '"18" is neither a day nor hours; write it like weekdays 18-21, Sat 9-16.'],
    ["Mon 18-25", '"18-25" is neither a day nor hours; write it like weekdays 18-21, Sat 9-16.'],
    ["Mon 24-25", '"24-25" is neither a day nor hours; write it like weekdays 18-21, Sat 9-16.'],
    ["Mon 24-2", '"24-2" opens as the day ends; say 0:00 of the next day.'],
    ["Mon 9-12 11-16", "The hours of one day overlap or are out of order; write them like 9-12 13-16."],
    ["Mon 13-16 9-12", "The hours of one day overlap or are out of order; write them like 9-12 13-16."],
    ["Mon 9-12 20-10", "The hours of one day overlap or are out of order; write them like 9-12 13-16."],
  ])('"%s" gets one sentence', (text, problem) => {
    expect(readWeeklyHours(text)).toEqual({ problem });
  });
});

describe("a day named again", () => {
  const said = (text: string): string => {
    const read = readWeeklyHours(text);
    return "weekly" in read ? formatWeeklyHours(read.weekly) : read.problem;
  };

  test.each([
    ["Sat 9-12, Sat 13-16", "Sat 9:00-12:00 13:00-16:00"],
    ["Sat 13-16, Sat 9-12", "Sat 9:00-12:00 13:00-16:00"],
    ["weekdays 9-12, weekdays 18-21", "weekdays 9:00-12:00 18:00-21:00"],
    ["Sat 9-12, weekend 18-21", "Sat 9:00-12:00 18:00-21:00, Sun 18:00-21:00"],
    ["Sat 9-10, Sat 11-12, Sat 13-14", "Sat 9:00-10:00 11:00-12:00 13:00-14:00"],
    ["Sat Sat 9-12, Sat 13-16", "Sat 9:00-12:00 13:00-16:00"],
  ])("has both sessions: %s", (text, both) => {
    expect(said(text)).toBe(both);
  });

  test.each([
    ["weekdays 18-21, Fri 17-20", "Mon-Thu 18:00-21:00, Fri 17:00-20:00"],
    ["weekdays 18-21, Fri 13-16, Fri 17-20", "Mon-Thu 18:00-21:00, Fri 13:00-16:00 17:00-20:00"],
    ["Sat 9-12, Sat closed", "daily closed"],
    ["Sat closed, Sat 9-12", "Sat 9:00-12:00"],
  ])("picked out of more days, or closed, takes the later words: %s", (text, later) => {
    expect(said(text)).toBe(later);
  });

  test("is refused where its sessions overlap", () => {
    const problem = "The hours of one day overlap or are out of order; write them like 9-12 13-16.";
    expect(said("Sat 9-13, Sat 12-16")).toBe(problem);
  });
});

describe("a pattern as it is said", () => {
  test("puts days that are alike together", () => {
    const said = (text: string) => {
      const read = readWeeklyHours(text);
      return "weekly" in read ? formatWeeklyHours(read.weekly) : read.problem;
    };
    expect(said("weekdays 18-21, Sat 9-16")).toBe("weekdays 18:00-21:00, Sat 9:00-16:00");
    expect(said("Mon Wed 18-21:30")).toBe("Mon Wed 18:00-21:30");
    expect(said("Tue-Thu 22-2")).toBe("Tue-Thu 22:00-2:00");
    expect(said("daily 9-12 13-16")).toBe("daily 9:00-12:00 13:00-16:00");
    expect(said("daily off")).toBe("daily closed");
    expect(formatDayHours([])).toBe("closed");
  });

  test("reads back to the same pattern", () => {
    const aDay = fc
      .uniqueArray(fc.integer({ min: 0, max: 1439 }), { maxLength: 6 })
      .map((minutes) => minutes.toSorted((a, b) => a - b))
      .map((ends) => (ends.length % 2 === 0 ? ends : [...ends, (ends[0] ?? 0) + 1440]))
      .map((ends) =>
        Array.from({ length: ends.length / 2 }, (_, index) => ({
          opens: ends[2 * index] ?? 0,
          closes: ends[2 * index + 1] ?? 0,
        })),
      );
    fc.assert(
      fc.property(
        fc.array(aDay, { minLength: 3, maxLength: 3 }),
        fc.array(fc.nat(2), { minLength: 7, maxLength: 7 }),
        (days, picks) => {
          const weekly = picks.map((pick) => days[pick] ?? []);
          expect(readWeeklyHours(formatWeeklyHours(weekly))).toEqual({ weekly });
        },
      ),
      { numRuns: 1_000 },
    );
  });

  test("one day's hours are read alone", () => {
    expect(readDayHours("9-12, 13-16")).toEqual({
      hours: [
        { opens: 540, closes: 720 },
        { opens: 780, closes: 960 },
      ],
    });
    expect(readDayHours("closed")).toEqual({ hours: [] });
    expect(readDayHours("")).toEqual({ problem: "No hours are said; write them like 18-21 or 9-12 13-16." });
  });
});

describe("hours of the days that are named", () => {
  test("leave the others alone", () => {
    const read = readNamedHours("Thu 18-22, Sat closed");
    if ("problem" in read) throw new Error(read.problem);
    expect([...read.days]).toEqual([
      [4, [{ opens: 18 * 60, closes: 22 * 60 }]],
      [6, []],
    ]);
  });

  test.each(["", "Thu", "18-22", "Thu noon-ish"])("are not in %j, and it says so", (words) => {
    expect(readNamedHours(words)).toHaveProperty("problem");
  });
});

describe("weekdays alone", () => {
  test.each([
    ["Sat", [6]],
    ["weekend", [6, 7]],
    ["Mon Wed", [1, 3]],
    ["Fri-Mon", [5, 6, 7, 1]],
    ["mondays and fridays", [1, 5]],
    ["Sat, Sat", [6]],
  ])("%s", (words, days) => {
    expect(readWeekdays(words)).toEqual(days);
  });

  test.each(["", "Blursday", "Sat 9-12", "3 May", "tomorrow"])("%j is none", (words) => {
    expect(readWeekdays(words)).toBeNull();
  });
});

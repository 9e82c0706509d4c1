import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BenchHours } from "../../src/time/bench-hours.ts";
import { readHoursWords } from "../../src/time/read-hours-words.ts";
import { ASSUMED_HOURS } from "../../src/time/sessions.ts";
import { DUBLIN, dublin } from "./zones-to-try.ts";

// Weekdays 18 to 21, Saturday 9 to 16. Thursday 26 March 2026, 19:20: the bench is open.
const thursday = dublin("2026-03-26", "19:20");
const words = (text: string, now = thursday, hours: BenchHours = ASSUMED_HOURS) =>
  readHoursWords(text, { now, zone: DUBLIN, hours });
const day = (date: string, ...stretches: [number, number][]) => ({
  setting: { of: "day", date, hours: stretches.map(([opens, closes]) => ({ opens, closes })) },
});

describe("till", () => {
  test("22:15 tonight makes the running session longer", () => {
    expect(words("till 22:15")).toEqual(day("2026-03-26", [1080, 1335]));
    expect(words("till 22:15 tonight")).toEqual(words("till 22:15"));
    expect(words("until 10:15 pm today")).toEqual(words("till 22:15"));
  });

  test("20:00 makes it shorter", () => {
    expect(words("till 20")).toEqual(day("2026-03-26", [1080, 1200]));
  });

  test("1:00 in the evening runs past midnight", () => {
    expect(words("till 1:00")).toEqual(day("2026-03-26", [1080, 1500]));
  });

  test("said past midnight in a running session is still that evening's", () => {
    const hours = { ...ASSUMED_HOURS, days: { "2026-03-26": [{ opens: 1080, closes: 1500 }] } };
    expect(words("till 2:00", dublin("2026-03-27", "0:30"), hours)).toEqual(day("2026-03-26", [1080, 1560]));
  });

  test("before the bench opens changes the session to come", () => {
    expect(words("till 22:15", dublin("2026-03-26", "16:00"))).toEqual(day("2026-03-26", [1080, 1335]));
  });

  test("after it has shut opens it again from now, not before", () => {
    expect(words("till 22:15", dublin("2026-03-26", "21:40"))).toEqual(
      day("2026-03-26", [1080, 1260], [1300, 1335]),
    );
  });

  test("on a day without hours opens it from now", () => {
    expect(words("till 17:00", dublin("2026-03-29", "14:30"))).toEqual(day("2026-03-29", [870, 1020]));
  });

  test("before the day's hours adds a stretch and keeps them", () => {
    expect(words("till 8:00", dublin("2026-03-28", "7:00"))).toEqual(
      day("2026-03-28", [420, 480], [540, 960]),
    );
  });

  test("a reading that has been, or none, gets one sentence", () => {
    expect(words("till 10")).toEqual({
      problem: "It is 19:20, 10:00 has been; say a later time, like till 22:15.",
    });
    expect(words("till late")).toEqual({ problem: '"late" is not a time of day; write it like till 22:15.' });
  });
});

describe("not", () => {
  test("tonight closes the bench from now on; what was open stays", () => {
    expect(words("not tonight")).toEqual(day("2026-03-26", [1080, 1160])); // 19:20 is 1160
    expect(words("not tonight", dublin("2026-03-26", "12:00"))).toEqual(day("2026-03-26"));
    expect(words("not today", dublin("2026-03-26", "21:30"))).toEqual(day("2026-03-26", [1080, 1260]));
  });

  test("another day closes it whole", () => {
    expect(words("not tomorrow")).toEqual(day("2026-03-27"));
    expect(words("not Saturday")).toEqual(day("2026-03-28"));
    expect(words("closed on 3 May")).toEqual(day("2026-05-03"));
    expect(words("not someday")).toEqual({
      problem: '"someday" is not a date; write it like Friday, tomorrow, 3 May or 2026-05-03.',
    });
  });

  test("and as usual again", () => {
    const usual = { setting: { of: "day", date: "2026-03-26", hours: null } };
    expect(words("usual tonight")).toEqual(usual);
    expect(words("as usual")).toEqual(usual);
  });
});

describe("one day's own hours", () => {
  test.each([
    ["today 14-18", day("2026-03-26", [840, 1080])],
    ["tonight 19 to 23", day("2026-03-26", [1140, 1380])],
    ["tomorrow 9-12 13-16", day("2026-03-27", [540, 720], [780, 960])],
    ["on Saturday 9-12", day("2026-03-28", [540, 720])],
    ["this Sat 9-12", day("2026-03-28", [540, 720])],
    ["next Thursday 9-12", day("2026-04-02", [540, 720])],
    ["3 May 9-12", day("2026-05-03", [540, 720])],
    ["May 3rd 9-12", day("2026-05-03", [540, 720])],
    ["2026-05-03 9-12", day("2026-05-03", [540, 720])],
    ["tomorrow closed", day("2026-03-27")],
    ["from 17 till 22", day("2026-03-26", [1020, 1320])],
    ["from 17:00 to 22:00 tonight", day("2026-03-26", [1020, 1320])],
  ])("%s", (text, setting) => {
    expect(words(text)).toEqual(setting);
  });

  test("a day with no hours said gets one sentence", () => {
    expect(words("tomorrow")).toEqual({
      problem: "No hours are said; write them like 18-21 or 9-12 13-16.",
    });
    expect(words("on whenever 9-12")).toEqual({
      problem: '"on whenever 9-12" names no day first; write it like tomorrow 9-12 or on 3 May 9-12.',
    });
  });
});

describe("days away", () => {
  const away = (from: string, to: string) => ({ setting: { of: "away", from, to } });
  test.each([
    ["away 3 May..17 May", away("2026-05-03", "2026-05-17")],
    ["away 3 May to 17 May", away("2026-05-03", "2026-05-17")],
    ["away 3 May - 17 May", away("2026-05-03", "2026-05-17")],
    ["away 3-17 May", away("2026-05-03", "2026-05-17")],
    ["away from 30 March to 12 April", away("2026-03-30", "2026-04-12")],
    ["away 2026-05-03..2026-05-17", away("2026-05-03", "2026-05-17")],
    ["away 2026-05-03-2026-05-17", away("2026-05-03", "2026-05-17")],
    ["away till Sunday", away("2026-03-26", "2026-03-29")],
    ["away Friday", away("2026-03-27", "2026-03-27")],
    ["away Friday to Monday", away("2026-03-27", "2026-03-30")],
    ["away 23 Dec..3 Jan", away("2026-12-23", "2027-01-03")],
  ])("%s", (text, setting) => {
    expect(words(text)).toEqual(setting);
  });

  test("and back", () => {
    expect(words("back")).toEqual({ setting: { of: "back", from: "2026-03-26" } });
    expect(words("back 10 May")).toEqual({ setting: { of: "back", from: "2026-05-10" } });
  });

  test("that make no sense get one sentence", () => {
    expect(words("away")).toEqual({ problem: "No days are said; write it like away 3 May..17 May." });
    expect(words("away 2026-05-17..2026-05-03")).toEqual({
      problem:
        "Days away cannot end on 2026-05-03, before they begin on 2026-05-17; write it like away 3 May..17 May.",
    });
    expect(words("away 17 May..3 May")).toEqual({
      problem:
        '"17 May..3 May" would be 2026-05-17 to 2027-05-03, more than half a year; if so, write both dates like 2026-05-03.',
    });
    expect(words("away 2026-05-17..2027-05-03")).toEqual(away("2026-05-17", "2027-05-03"));
    expect(words("away 1..2..3 May")).toEqual({
      problem: '"1..2..3 May" is more than one span of days; write it like away 3 May..17 May.',
    });
    expect(words("away 31 April")).toEqual({
      problem: 'There is no date "31 April" in the calendar; write it like 3 May or 2026-05-03.',
    });
  });
});

describe("a weekly pattern", () => {
  test("holds from today, or from the day named", () => {
    expect(words("weekdays 18-21, Sat 9-16")).toMatchObject({ setting: { of: "hours", from: "2026-03-26" } });
    expect(words("Sat 9 to 12")).toMatchObject({ setting: { of: "hours", from: "2026-03-26" } });
    expect(words("from 1 May weekdays 18-21")).toMatchObject({
      setting: { of: "hours", from: "2026-05-01" },
    });
    expect(words("from Monday daily 9-17")).toMatchObject({ setting: { of: "hours", from: "2026-03-30" } });
  });

  test("that says nothing known gets one sentence", () => {
    expect(words("whenever")).toEqual({
      problem: '"whenever" is neither a day nor hours; write it like weekdays 18-21, Sat 9-16.',
    });
    expect(words("from whenever daily 9-17")).toEqual({
      problem: '"from whenever daily 9-17" names no date first; write it like from 1 May weekdays 18-21.',
    });
  });
});

test("whatever is typed, the answer is a setting in order or a sentence", () => {
  const scraps = fc.constantFrom(
    "till",
    "not",
    "away",
    "from",
    "Fri",
    "weekdays",
    "9-12",
    "22:15",
    "3",
    "May",
    "..",
    "to",
    "tonight",
    "back",
    "on",
    "closed",
  );
  const texts = fc.oneof(
    fc.string(),
    fc.array(scraps).map((parts) => parts.join(" ")),
  );
  fc.assert(
    fc.property(texts, (text) => {
      const read = words(text);
      if ("problem" in read) {
        expect(read.problem).toMatch(/\.$/);
        return;
      }
      const stretches =
        read.setting.of === "hours"
          ? read.setting.weekly.flat()
          : read.setting.of === "day"
            ? (read.setting.hours ?? [])
            : [];
      for (const { opens, closes } of stretches) {
        expect(opens >= 0 && opens < closes && closes <= opens + 1440).toBe(true);
      }
      if (read.setting.of === "away") expect(read.setting.from <= read.setting.to).toBe(true);
    }),
    { numRuns: 3_000 },
  );
});

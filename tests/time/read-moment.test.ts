import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { localTime } from "../../src/time/civil.ts";
import { clockReading, readClock } from "../../src/time/clock-reading.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { readDate } from "../../src/time/read-date.ts";
import { readMoment } from "../../src/time/read-moment.ts";
import { DUBLIN, dublin } from "./zones-to-try.ts";

// Wednesday 25 March 2026, 18:00.
const now = dublin("2026-03-25", "18:00");
const moment = (text: string, at = now) => readMoment(text, { now: at, zone: DUBLIN });
const date = (text: string, prefer: "future" | "past" = "future") =>
  readDate(text, { now, zone: DUBLIN, prefer });

describe("a time of day", () => {
  test.each([
    ["22:15", 1335], // 22 x 60 + 15
    ["22.15", 1335],
    ["22h15", 1335],
    ["2215", 1335],
    ["22", 1320],
    ["9:05", 545],
    ["10:15 pm", 1335],
    ["10pm", 1320],
    ["12 am", 0],
    ["12:30 pm", 750],
    ["0:00", 0],
    ["24:00", 1440],
    ["noon", 720],
    ["midnight", 1440],
  ])("%s is minute %i", (text, minute) => {
    expect(readClock(text)).toBe(minute);
  });

  test.each(["", "25", "24:01", "12:60", "13 pm", "0 am", "12:5", "2460", "teatime", "-1:00"])(
    '"%s" is none',
    (text) => {
      expect(readClock(text)).toBeNull();
    },
  );

  test("as shown it reads back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1440 }), (minute) => {
        expect(readClock(clockReading(minute))).toBe(minute);
      }),
    );
    expect(clockReading(26 * 60)).toBe("2:00");
  });
});

describe("a moment in the past", () => {
  test.each([
    ["now", "2026-03-25", "18:00"],
    ["17:45", "2026-03-25", "17:45"],
    ["at 17:45", "2026-03-25", "17:45"],
    ["20m ago", "2026-03-25", "17:40"],
    ["1 h 30 ago", "2026-03-25", "16:30"],
    ["2 d ago", "2026-03-23", "18:00"],
    ["yesterday 20:00", "2026-03-24", "20:00"],
    ["yesterday at 8 pm", "2026-03-24", "20:00"],
    ["today 9:00", "2026-03-25", "9:00"],
    ["Tue 18:40", "2026-03-24", "18:40"],
    ["Thu 18:40", "2026-03-19", "18:40"], // last week's: tomorrow's has not been
    ["Wed 12:00", "2026-03-25", "12:00"],
    ["3 May 9:00", "2025-05-03", "9:00"],
    ["20 Mar 9:00", "2026-03-20", "9:00"],
    ["March 20th, 9:00", "2026-03-20", "9:00"],
    ["2026-03-20 9:00", "2026-03-20", "9:00"],
    ["2026-03-20T09:00", "2026-03-20", "9:00"],
    ["2026-03-20T09:00Z", "2026-03-20", "9:00"], // winter time is UTC
    ["2026-03-20T10:00+01:00", "2026-03-20", "9:00"],
    ["2026-03-20T04:00-0500", "2026-03-20", "9:00"],
  ])("%s", (text, day, clock) => {
    expect(moment(text)).toEqual({ instant: dublin(day, clock) });
  });

  test("a bare reading more than 12 hours ahead was yesterday's", () => {
    expect(moment("23:50", dublin("2026-03-25", "0:30"))).toEqual({ instant: dublin("2026-03-24", "23:50") });
    expect(moment("20:15", dublin("2026-03-25", "8:00"))).toEqual({ instant: dublin("2026-03-24", "20:15") });
  });

  test("a reading still to come stays today's, for the caller to refuse", () => {
    expect(moment("20:15")).toEqual({ instant: dublin("2026-03-25", "20:15") });
  });

  test("when the future is asked for, weekdays and dates are those to come", () => {
    const coming = (text: string) => readMoment(text, { now, zone: DUBLIN, prefer: "future" });
    expect(coming("Sat 12:00")).toEqual({ instant: dublin("2026-03-28", "12:00") });
    expect(coming("3 May 9:00")).toEqual({ instant: dublin("2026-05-03", "9:00") });
  });

  test("when what is near is asked for, weekdays are to come, and dates are in the year that brings them nearest", () => {
    const near = (text: string) => readMoment(text, { now, zone: DUBLIN, prefer: "near" });
    expect(near("Sat 12:00")).toEqual({ instant: dublin("2026-03-28", "12:00") });
    expect(near("3 May 9:00")).toEqual({ instant: dublin("2026-05-03", "9:00") });
    // It is the 25th of March: the 2nd is three weeks ago, 30 December nearer behind than ahead.
    expect(near("2 March 18:00")).toEqual({ instant: dublin("2026-03-02", "18:00") });
    expect(near("30 Dec 18:00")).toEqual({ instant: dublin("2025-12-30", "18:00") });
    expect(near("29 Feb 18:00")).toEqual({ instant: dublin("2028-02-29", "18:00") });
  });

  test("seconds and fractions of a written moment are kept to the second", () => {
    expect(moment("2026-03-20T09:00:30.5Z")).toEqual({ instant: Date.UTC(2026, 2, 20, 9, 0, 30) });
  });

  test("any moment of these years reads back from its own ISO writing", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_704_067_200, max: 2_082_758_400 }), (second) => {
        expect(moment(new Date(second * 1_000).toISOString())).toEqual({ instant: second * 1_000 });
        const local = localTime(DUBLIN, second * 1_000);
        const clock = clockReading(local.hour * 60 + local.minute);
        const read = moment(`${local.date} ${clock}`);
        // To the minute, and the first showing of an hour that is shown twice.
        const late = "instant" in read ? second * 1_000 - read.instant : Number.NaN;
        expect([0, 60].includes(Math.floor(late / MINUTE))).toBe(true);
      }),
    );
  });
});

describe("a date", () => {
  test.each([
    ["today", "2026-03-25"],
    ["tonight", "2026-03-25"],
    ["tomorrow", "2026-03-26"],
    ["yesterday", "2026-03-24"],
    ["in 3 days", "2026-03-28"],
    ["in 2 weeks", "2026-04-08"],
    ["Friday", "2026-03-27"],
    ["fri", "2026-03-27"],
    ["Wednesday", "2026-03-25"], // today counts
    ["next Wednesday", "2026-04-01"],
    ["this Friday", "2026-03-27"],
    ["last Friday", "2026-03-20"],
    ["3 May", "2026-05-03"],
    ["May 3", "2026-05-03"],
    ["3rd May", "2026-05-03"],
    ["on 3 May", "2026-05-03"],
    ["1 March", "2027-03-01"],
    ["3 May 2028", "2028-05-03"],
    ["29 Feb", "2028-02-29"],
    ["2026-05-03", "2026-05-03"],
    // As screens have it.
    ["Sun 3 May", "2026-05-03"],
    ["Sunday, May 3rd", "2026-05-03"],
    ["Wed 25 Mar", "2026-03-25"],
    ["Sun 2026-05-03", "2026-05-03"],
  ])("%s, to come", (text, expected) => {
    expect(date(text)).toEqual({ date: expected });
  });

  test.each([
    ["Friday", "2026-03-20"],
    ["Wednesday", "2026-03-25"],
    ["3 May", "2025-05-03"],
    ["29 Feb", "2024-02-29"],
  ])("%s, that was", (text, expected) => {
    expect(date(text, "past")).toEqual({ date: expected });
  });
});

describe("words that say no moment get one sentence with what to write", () => {
  test.each([
    [
      "soonish",
      '"soonish" is not a moment; write it like 20:15, yesterday 20:00, Tue 18:40, 3 May 9:00 or 20m ago.',
    ],
    ["yesterday", '"yesterday" names a day but no time; say yesterday 20:00.'],
    ["3 May 2015", '"3 May 2015" names a day but no time; say 3 May 2015 20:00.'],
    ["a while ago", '"a while" before "ago" is not a duration; write it like 20m ago or 1 h 30 ago.'],
    ["30 Feb 9:00", 'There is no date "30 Feb" in the calendar; write it like 3 May or 2026-05-03.'],
    [
      "2026-02-30T09:00",
      'There is no moment "2026-02-30T09:00"; write it like 2026-03-28T14:05 or 3 May 14:05.',
    ],
    [
      "2026-02-28T24:01",
      'There is no moment "2026-02-28T24:01"; write it like 2026-03-28T14:05 or 3 May 14:05.',
    ],
    ["Mon 3 May 9:00", '"Mon 3 May" is not in the calendar: 2025-05-03 is a Saturday.'],
    ["Frday 9:00", '"Frday" is not a date; write it like Friday, tomorrow, 3 May or 2026-05-03.'],
  ])("%s", (text, problem) => {
    expect(moment(text)).toEqual({ problem });
  });

  test("a date that is not in the calendar is told apart from words that are no date", () => {
    expect(date("2026-13-01")).toEqual({
      problem: 'There is no date "2026-13-01" in the calendar; write it like 3 May or 2026-05-03.',
    });
    expect(date("whenever")).toEqual({
      problem: '"whenever" is not a date; write it like Friday, tomorrow, 3 May or 2026-05-03.',
    });
  });

  test("whatever is typed, the answer is a whole moment or a sentence", () => {
    const scraps = fc.constantFrom(
      "Fri",
      "3",
      "May",
      " ",
      "9:00",
      "ago",
      "2h",
      "2026-05-03",
      "at",
      "-",
      "T",
      "__proto__",
    );
    const texts = fc.oneof(
      fc.string(),
      fc.array(scraps).map((parts) => parts.join(" ")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = moment(text);
        if ("problem" in read) expect(read.problem).toMatch(/\.$/);
        else expect(Number.isInteger(read.instant)).toBe(true);
      }),
      { numRuns: 3_000 },
    );
  });
});

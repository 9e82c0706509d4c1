import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatDuration, parseDuration } from "../../src/time/duration.ts";
import { isoMoment } from "../../src/words/iso-moment.ts";
import { breakLine } from "../../src/words/lay-out.ts";
import { readScheme, sayScheme } from "../../src/words/read-scheme.ts";
import { readTags } from "../../src/words/read-tags.ts";
import { rowTags, sayCount, sayList, sayTags } from "../../src/words/say-list.ts";
import { readMoney, sayMoney } from "../../src/words/say-money.ts";
import {
  sayBenchTime,
  sayClock,
  sayClockOfDay,
  sayDate,
  sayDayAndClock,
  sayWait,
} from "../../src/words/say-time.ts";
import { widthOf } from "../../src/words/width.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const speech = { zone: dublin, now: at("Tue 18:42"), clock24: true };

test.each([
  [0, "0 min"],
  // Shares of minutes have fractions.
  [59.4, "59 min"],
  [59.6, "1 h"],
  [90, "1 h 30"],
  [1_445, "24 h 05"],
  [3_360, "56 h"],
])("%d minutes at the bench are told as %s, never in days", (minutes, said) => {
  expect(sayBenchTime(minutes)).toBe(said);
});

describe("a moment", () => {
  test.each([
    ["Tue 19:34", "19:34"],
    ["Tue 00:05", "00:05"],
    ["Mon 23:04", "Mon 23:04"],
    ["Wed 08:38", "Wed 08:38"],
    ["next Mon 18:00", "Mon 18:00"],
  ])("%s is said on Tuesday evening as %s", (moment, said) => {
    expect(sayClock(at(moment), speech)).toBe(said);
  });

  test("a week and more away is told with its date, another year with its year", () => {
    expect(sayClock(at("Tue 18:42") + 7 * 86_400_000, speech)).toBe("Tue 31 Mar 19:42");
    expect(sayClock(Date.UTC(2027, 3, 14, 18, 0), speech)).toBe("14 Apr 2027 18:00");
    expect(sayClock(Date.UTC(2025, 11, 24, 9, 30), speech)).toBe("24 Dec 2025 09:30");
  });

  test("over a clock change is told by the new clock", () => {
    // Clocks go forward on Sunday 29 March at 01:00: 00:30 and a half hour later it is 02:00.
    expect(sayClock(at("Sun 00:30") + 30 * 60_000, speech)).toBe("Sun 02:00");
  });

  test.each([
    [0, "12:00 am"],
    [725, "12:05 pm"],
    [1174, "7:34 pm"],
    [1439, "11:59 pm"],
    // A bench that runs past midnight.
    [1500, "1:00 am"],
  ])("minute %d of the day is %s on a clock of twelve hours", (minute, said) => {
    expect(sayClockOfDay(minute, false)).toBe(said);
  });

  test("the head of a screen has the whole day", () => {
    expect(sayDayAndClock(at("Tue 18:42"), speech)).toBe("Tue 24 Mar 18:42");
    expect(sayDate("2026-03-24", speech)).toBe("today");
    expect(sayDate("2026-03-25", speech)).toBe("tomorrow");
    expect(sayDate("2026-03-27", speech)).toBe("Fri");
    expect(sayDate("2026-05-03", speech)).toBe("Sun 3 May");
  });

  test("for other programs is ISO 8601 with the offset of the shop's zone, and reads back to itself", () => {
    expect(isoMoment(at("Tue 19:04"), dublin)).toBe("2026-03-24T19:04:00+00:00");
    expect(isoMoment(at("Sun 20:00"), dublin)).toBe("2026-03-29T20:00:00+01:00");
    const west = { name: "America/St_Johns", offsetMinutes: -210, changes: [] };
    expect(isoMoment(Date.UTC(2026, 0, 2, 3, 4, 5), west)).toBe("2026-01-01T23:34:05-03:30");
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4e12 }), (instant) => {
        expect(Date.parse(isoMoment(instant, dublin))).toBe(instant);
      }),
    );
  });
});

test("a wait parses back to the minutes it was", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_000_000 }), (minutes) => {
      expect(parseDuration(sayWait(minutes))).toBe(minutes);
    }),
  );
  expect(sayWait(-5)).toBe(formatDuration(0));
  // Shares of minutes are told whole.
  expect(sayWait(7.5)).toBe("8 min");
});

describe("tags", () => {
  test("are said as a sentence or a row has them", () => {
    expect(sayTags([2, 1])).toBe("1 and 2");
    expect(sayTags([12, 13, 14])).toBe("12, 13 and 14");
    expect(sayTags([12, 13, 14, 15, 18])).toBe("12-15 and 18");
    expect(rowTags([16, 17, 18, 20])).toBe("16-18 20");
    expect(sayList(["dry", "hard"], "or")).toBe("dry or hard");
    expect(sayList([])).toBe("");
    expect(sayCount(1, "hook")).toBe("1 hook");
    expect(sayCount(0, "hook")).toBe("0 hooks");
  });

  test.each([
    ["14", [14]],
    ["#14", [14]],
    ["12-14", [12, 13, 14]],
    ["14-12", [12, 13, 14]],
    ["12..14", [12, 13, 14]],
    ["12,14-15", [12, 14, 15]],
    ["0", [0]],
    ["14th", null],
    ["-3", null],
    ["", null],
    ["1-1000000", null],
    ["12345678901", null],
  ])("%j is read as %j", (word, tags) => expect(readTags(word)).toEqual(tags));

  test("read back from the row they are said in", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 30 }),
        (tags) => {
          const read = rowTags(tags)
            .split(" ")
            .flatMap((word) => readTags(word) ?? []);
          expect(read).toEqual(tags.toSorted((a, b) => a - b));
        },
      ),
    );
  });
});

describe("a scheme", () => {
  test("is colours with minutes and flash-off, as far as they are said", () => {
    expect(readScheme("ochre 10/5, green 6, gill red")).toEqual({
      scheme: [
        { colour: "ochre", minutes: 10, flashOff: 5 },
        { colour: "green", minutes: 6, flashOff: null },
        { colour: "gill red", minutes: null, flashOff: null },
      ],
    });
    expect(readScheme("pearl 10 min / 1 h")).toEqual({
      scheme: [{ colour: "pearl", minutes: 10, flashOff: 60 }],
    });
    expect(readScheme("gold/5")).toEqual({ scheme: [{ colour: "gold", minutes: null, flashOff: 5 }] });
  });

  test.each(["", "ochre, ", "10/5", "ochre 10/soon", "ochre ten/5x"])("%j is none", (text) => {
    expect(readScheme(text)).toHaveProperty("problem");
  });

  test("reads back from how it is said", () => {
    const pass = fc.record({
      colour: fc.constantFrom("ochre", "gill red", "olive green"),
      minutes: fc.option(fc.integer({ min: 1, max: 90 })),
      flashOff: fc.option(fc.integer({ min: 1, max: 90 })),
    });
    fc.assert(
      fc.property(fc.array(pass, { minLength: 1, maxLength: 6 }), (scheme) => {
        expect(readScheme(sayScheme(scheme))).toEqual({ scheme });
      }),
    );
  });
});

describe("money", () => {
  test.each([
    ["28", 2800],
    ["28.50", 2850],
    ["28,5", 2850],
    ["£28", 2800],
    ["28 €", 2800],
    ["28.505", null],
    ["-3", null],
    ["much", null],
  ])("%j is %j of the smallest unit", (text, money) => expect(readMoney(text)).toBe(money));

  test("reads back from how it is said", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (money) => {
        expect(readMoney(sayMoney(money))).toBe(money);
      }),
    );
  });
});

describe("a line longer than the terminal is wide", () => {
  test("is broken at spaces and goes on two cells further in, so that no word is torn", () => {
    // 16 cells are left beside the two of the line's own indent and two more.
    expect(breakLine("  Never: sand beside a flame", 20)).toBe("  Never: sand\n    beside a flame");
    expect(breakLine("Never: sand beside a flame", null)).toBe("Never: sand beside a flame");
    expect(breakLine("  1 perch  seal", 20)).toBe("  1 perch  seal");
  });

  test("keeps every word in its order, whatever the width, and no line is wider", () => {
    const words = fc.array(fc.constantFrom("sand", "beside", "鮎", "a", "flame"), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(words, fc.nat(6), fc.integer({ min: 24, max: 90 }), (said, indent, columns) => {
        const line = `${" ".repeat(indent)}${said.join(" ")}`;
        const broken = breakLine(line, columns);
        expect(broken.trim().split(/\s+/)).toEqual(said);
        for (const part of broken.split("\n")) expect(widthOf(part)).toBeLessThanOrEqual(columns);
      }),
    );
  });
});

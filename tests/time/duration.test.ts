import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatDuration, LONGEST, parseDuration } from "../../src/time/duration.ts";

describe("durations as people write them", () => {
  test.each([
    ["20 min", 20],
    ["20m", 20],
    ["20 minutes", 20],
    ["4 h", 240],
    ["1 h 30 min", 90], // 60 + 30
    ["1 h 30", 90],
    ["1h30", 90],
    ["1h30m", 90],
    ["1 h 05", 65],
    ["1.5 h", 90],
    ["1,5 h", 90],
    ["2 d", 2880], // 2 x 1440
    ["2 days 3 hours", 3060], // 2880 + 180
    ["2 d 3 h 30", 3090],
    ["1 week", 10080], // 7 x 1440
    [" 20 MIN ", 20],
    ["0 min", 0],
  ])("%s is %i minutes", (text, minutes) => {
    expect(parseDuration(text)).toBe(minutes);
  });

  test.each([
    "",
    " ",
    "20", // minutes or hours? not guessed
    "min",
    "20 parsecs",
    "-20 min",
    "20 min 1 h", // from the greatest unit down
    "1 h 1 h",
    "2 d 3", // three of what?
    "1 h 30 15",
    "1.5 h 20 min", // a fraction may only stand last
    "0.3 min", // not whole minutes
    "3 years",
    "1e3 min",
    "20 min.",
    "40000 d", // more than a hundred years
    "99999999999999999999 h",
  ])('"%s" is no duration', (text) => {
    expect(parseDuration(text)).toBeNull();
  });
});

describe("durations as the screens say them", () => {
  test.each([
    [0, "0 min"],
    [5, "5 min"],
    [60, "1 h"],
    [65, "1 h 05"],
    [138, "2 h 18"], // 120 + 18
    [1440, "24 h"],
    [2879, "47 h 59"], // a minute short of two days is still said in hours
    [2880, "2 d"],
    [2885, "2 d 5 min"],
    [3060, "2 d 3 h"],
    [3150, "2 d 4 h 30"],
  ])("%i minutes are %s", (minutes, text) => {
    expect(formatDuration(minutes)).toBe(text);
  });

  test("every duration printed parses back", () => {
    const near = fc.integer({ min: 0, max: 3 * 1440 });
    const any = fc.integer({ min: 0, max: LONGEST });
    fc.assert(
      fc.property(fc.oneof(near, any), (minutes) => {
        expect(parseDuration(formatDuration(minutes))).toBe(minutes);
      }),
      { numRuns: 5_000 },
    );
  });

  test("any text at all is a duration that can be printed, or none", () => {
    const scraps = fc.constantFrom("1", "30", ".5", " ", "h", "m", "d", "min", "P", "T", "W", ",", "-");
    const texts = fc.oneof(
      fc.string(),
      fc.array(scraps).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const minutes = parseDuration(text);
        if (minutes !== null) expect(parseDuration(formatDuration(minutes))).toBe(minutes);
      }),
      { numRuns: 5_000 },
    );
  });

  test.each([-1, 0.5, Number.NaN, LONGEST + 1])("%d minutes are our own mistake", (minutes) => {
    expect(() => formatDuration(minutes)).toThrow(RangeError);
  });
});

import { describe, expect, test } from "vitest";
import { readPace } from "../../src/words/read-pace.ts";
import { sayPace } from "../../src/words/say-pace.ts";

describe("a pace as people write it", () => {
  test.each([
    ["1/day", 1, 1],
    ["5/week", 5, 7],
    ["1 every 2 days", 1, 2],
    ["1/2 days", 1, 2],
    ["3 a week", 3, 7],
    ["2 per day", 2, 1],
    ["daily", 1, 1],
    [" 1 / Week ", 1, 7],
    ["4 every 2 weeks", 4, 14],
  ])("%s", (said, pieces, days) => {
    expect(readPace(said)).toEqual({ pace: { pieces, days } });
  });

  test.each([
    ["never", "is no pace"],
    ["", "is no pace"],
    ["five a week", "is no pace"],
    ["0/day", "finishes nothing"],
    ["1/0 days", "finishes nothing"],
    ["1/5 weeks", "slower than a rotation"],
    ["21/week", "more than can be searched"],
    ["-1/day", "is no pace"],
    ["1/day extra", "is no pace"],
    ["constructor", "is no pace"],
  ])("%s is told", (said, what) => {
    const read = readPace(said);
    expect("problem" in read && read.problem).toContain(what);
  });
});

describe("a pace in words", () => {
  test.each([
    [1, 1, "1 a day"],
    [5, 7, "5 a week"],
    [1, 2, "one every 2 days"],
    [3, 14, "3 every 2 weeks"],
  ])("%i in %i days", (pieces, days, said) => {
    expect(sayPace({ pieces, days })).toBe(said);
    expect(readPace(said.replace("one", "1"))).toEqual({ pace: { pieces, days } });
  });
});

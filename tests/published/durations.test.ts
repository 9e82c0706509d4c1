/**
 * Durations against the standards. ISO 8601-1:2019, 5.5.2: `P[n]DT[n]H[n]M[n]S` or `P[n]W`; zero parts may be left
 * out, the least may have a decimal fraction by comma or point. RFC 5545, 3.3.6, is the same without years, months
 * and fractions, and with a sign.
 */
import { describe, expect, test } from "vitest";
import { parseDuration } from "../../src/time/duration.ts";

const DAY = 24 * 60;

describe("RFC 5545", () => {
  test("3.3.6: P7W is seven weeks", () => {
    expect(parseDuration("P7W")).toBe(7 * 7 * DAY);
  });

  test("3.3.6: P15DT5H0M20S is 15 days, 5 hours and 20 seconds, which is not whole minutes", () => {
    expect(parseDuration("P15DT5H0M20S")).toBeNull();
    // Three of its 20 seconds make the minute whole.
    expect(parseDuration("P15DT5H0M60S")).toBe(15 * DAY + 5 * 60 + 1);
  });

  test.each([
    ["PT1H", 60], // 3.8.2.5, DURATION:PT1H0M0S and PT15M beside it
    ["PT1H0M0S", 60],
    ["PT15M", 15],
    ["PT30M", 30], // 3.8.6.3, TRIGGER:-PT30M without its sign
    ["P1D", DAY],
    ["P2DT3H30M", 2 * DAY + 210],
    ["+P7D", 7 * DAY],
  ])("%s is %i minutes", (text, minutes) => {
    expect(parseDuration(text)).toBe(minutes);
  });

  test.each(["-P7D", "-PT15M"])("%s is earlier: a signed trigger, not a length of work or cure", (text) => {
    expect(parseDuration(text)).toBeNull();
  });
});

describe("ISO 8601", () => {
  test.each([
    ["P4W", 4 * 7 * DAY],
    ["PT36H", 36 * 60], // the same length as P1DT12H
    ["P1DT12H", 36 * 60],
    ["PT0,5H", 30],
    ["PT1.5H", 90],
    ["P0.5D", DAY / 2],
    ["PT0S", 0],
    ["P0D", 0],
    ["PT120S", 2],
  ])("%s is %i minutes", (text, minutes) => {
    expect(parseDuration(text)).toBe(minutes);
  });

  test("the much used example P3Y6M4DT12H30M5S has years and months, whose length depends on the date", () => {
    expect(parseDuration("P3Y6M4DT12H30M5S")).toBeNull();
    expect(parseDuration("P1M")).toBeNull();
    expect(parseDuration("P1Y")).toBeNull();
  });

  test.each(["P", "PT", "P1DT", "P1H", "PT1D", "PT1M1H", "P1W2D", "P1.5DT1H", "P-1D", "PT 1H"])(
    "%s does not follow the grammar",
    (text) => {
      expect(parseDuration(text)).toBeNull();
    },
  );
});

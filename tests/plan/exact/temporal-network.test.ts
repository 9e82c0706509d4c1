import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addLag, findLongestPaths, NO_PATH } from "../../../src/plan/exact/projects/longest-paths.ts";

const events = 6;

const lag = fc.record({
  from: fc.nat(events - 1),
  to: fc.nat(events - 1),
  least: fc.integer({ min: -9, max: 4 }),
});

describe("the temporal network", () => {
  test("adds the lags along the longest way: 3 then 4 is more than 5 straight", () => {
    const paths = findLongestPaths(3, [
      { from: 0, to: 1, least: 3 },
      { from: 1, to: 2, least: 4 },
      { from: 0, to: 2, least: 5 },
    ]);
    expect([...(paths?.length ?? [])]).toEqual([0, 3, 7, NO_PATH, 0, 4, NO_PATH, NO_PATH, 0]);
  });

  test("finds that at least 5 after and at most 4 after contradict each other, and that 5 and 5 do not", () => {
    const after = { from: 0, to: 1, least: 5 };
    expect(findLongestPaths(2, [after, { from: 1, to: 0, least: -4 }])).toBeNull();
    expect(findLongestPaths(2, [after, { from: 1, to: 0, least: -5 }])).not.toBeNull();
  });

  test("is the same whether a lag comes with the others or is added afterwards", () => {
    fc.assert(
      fc.property(fc.array(lag, { maxLength: 10 }), lag, (lags, last) => {
        const paths = findLongestPaths(events, lags);
        if (paths === null) return;
        const whole = findLongestPaths(events, [...lags, last]);
        expect(addLag(paths, last)).toBe(whole !== null);
        if (whole !== null) expect([...paths.length]).toEqual([...whole.length]);
      }),
    );
  });
});

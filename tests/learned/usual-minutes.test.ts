import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { median } from "../../src/learned/median.ts";
import { RECORDS_USED, usualMinutes } from "../../src/learned/usual-minutes.ts";

const step = { handsOn: { low: 5, likely: 8, high: 12 } };
const records = (minutes: readonly number[]) => minutes.map((count) => ({ minutes: count }));

describe("usual minutes", () => {
  test("are the file's likely figure until there are five records", () => {
    expect(usualMinutes(step, [])).toBe(8);
    expect(usualMinutes(step, records([20, 20, 20, 20]))).toBe(8);
  });

  test("are the median from five records on: 9 10 11 12 and one forgotten timer of 240 give 11", () => {
    expect(usualMinutes(step, records([9, 10, 12, 11, 240]))).toBe(11);
  });

  test("are rounded up to whole minutes: shares of 4.33 give 5", () => {
    expect(usualMinutes(step, records([4.33, 4.33, 4.33, 4.33, 4.33]))).toBe(5);
  });

  test("lean on the newest records only: twenty of 6 min hide any number of older ones of 30", () => {
    const newest = Array.from({ length: RECORDS_USED }, () => 6);
    const older = Array.from({ length: 100 }, () => 30);
    expect(usualMinutes(step, records([...newest, ...older]))).toBe(6);
  });

  test("do not move by what one wild record says, however wild", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e9, noNaN: true }), (wild) => {
        const usual = usualMinutes(step, records([7, 8, 8, 9, wild]));
        expect(usual).toBe(8);
      }),
    );
  });
});

describe("the median", () => {
  test("of copper in flour is 3.385, one wild value of 28.95 among the 24 (Venables & Ripley 2002, section 5.5)", () => {
    const chem = [
      2.2, 2.2, 2.4, 2.4, 2.5, 2.7, 2.8, 2.9, 3.03, 3.03, 3.1, 3.37, 3.4, 3.4, 3.4, 3.5, 3.6, 3.7, 3.7, 3.7,
      3.7, 3.77, 5.28, 28.95,
    ];
    expect(chem).toHaveLength(24);
    expect(median(chem)).toBeCloseTo(3.385, 12);
    // As minutes at the bench: the mean would say 5 (4.28), the median says 4.
    expect(usualMinutes(step, records(chem))).toBe(4);
  });

  test("has as many values below as above", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1 }), (values) => {
        const middle = median(values);
        const below = values.filter((value) => value < middle).length;
        const above = values.filter((value) => value > middle).length;
        expect(Math.max(below, above)).toBeLessThanOrEqual(values.length / 2);
      }),
    );
  });

  test("of nothing is refused", () => {
    expect(() => median([])).toThrow(RangeError);
  });
});

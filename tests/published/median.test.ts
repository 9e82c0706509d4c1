/**
 * Copper in wholemeal flour, 24 values in parts per million (the data set "chem"): Venables and Ripley, Modern Applied
 * Statistics with S, 4th edition 2002, section 5.5, who give the mean 4.28, which one wild value spoils, and the median 3.385.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { median } from "../../src/pace/median.ts";

const copper = [
  2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2,
  3.5, 3.6, 3.7, 3.7,
];

test("the median of the copper is 3.385, half way from the 12th to the 13th value", () => {
  expect(median(copper)).toBeCloseTo((3.37 + 3.4) / 2, 12);
  expect(median(copper)).toBeCloseTo(3.385, 12);
});

test("of an odd number it is the middle one, of none nothing", () => {
  expect(median([5])).toBe(5);
  expect(median([9, 1, 4])).toBe(4);
  expect(median([])).toBeNull();
});

test("as many values lie below as above, in whatever order they are given", () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 1 }), (values) => {
      const middle = median(values) ?? Number.NaN;
      expect(values.filter((value) => value < middle).length).toBeLessThanOrEqual(values.length / 2);
      expect(values.filter((value) => value > middle).length).toBeLessThanOrEqual(values.length / 2);
      expect(median(values.toReversed())).toBe(middle);
    }),
  );
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { openingAfter, shutAfter } from "../../src/plan/lag.ts";
import type { Lag } from "../../src/plan/problem.ts";
import { shiftLag } from "../../src/simulate/shift-lag.ts";

/** Waits of air that changes: begun each 15 min, they end later and later, and at last never. */
const table: fc.Arbitrary<Exclude<Lag, number>> = fc
  .array(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 40 })
  .map((rises) => {
    let end = 60;
    const reached = rises.map((rise) => {
      end += rise;
      return end;
    });
    return { every: 15, reached: [...reached, null] };
  });
const minute = fc.integer({ min: 0, max: 700 });

test("a wait told from a later minute is never over sooner than it was", () => {
  fc.assert(
    fc.property(table, minute, minute, (lag, by, from) => {
      const shifted = openingAfter(shiftLag(lag, by, openingAfter), from);
      expect(shifted + by).toBeGreaterThanOrEqual(openingAfter(lag, from + by));
    }),
  );
});

test("a window told from a later minute never shuts later than it did", () => {
  fc.assert(
    fc.property(table, minute, minute, (lag, by, from) => {
      const shifted = shutAfter(shiftLag(lag, by, shutAfter), from);
      expect(shifted + by).toBeLessThanOrEqual(shutAfter(lag, from + by));
    }),
  );
});

test("moved by whole entries it is the same wait", () => {
  // Begun at 15 it ends at 100; told from minute 15 on, begun at 0 it ends at 85.
  const lag = { every: 15, reached: [60, 100, 140, null] };
  expect(shiftLag(lag, 15, openingAfter)).toEqual({ every: 15, reached: [85, 125, null] });
  expect(shiftLag(240, 15, openingAfter)).toBe(240);
});

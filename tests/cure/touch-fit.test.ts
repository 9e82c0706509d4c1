import fc from "fast-check";
import { expect, test } from "vitest";
import { coatFactor, type FactorSpan, fitFactor } from "../../src/cure/touch-fit.ts";

const NEVER = Number.POSITIVE_INFINITY;
const least = (factor: number): FactorSpan => ({ least: factor, most: NEVER });
const most = (factor: number): FactorSpan => ({ least: 0, most: factor });

test("a touch that agrees moves nothing", () => {
  expect(coatFactor(1, { least: 0.8, most: 1.1 })).toBe(1);
  expect(fitFactor([least(0.9), most(1.2), { least: 0.5, most: 1 }])).toBeCloseTo(1, 9);
  expect(fitFactor([])).toBeCloseTo(1, 9);
});

test("a touch that denies the sheet moves its own coat just as far as it says", () => {
  expect(coatFactor(1, least(1.5))).toBe(1.5);
  expect(coatFactor(1.4, most(1.1))).toBe(1.1);
});

test("no touch makes its own coat quicker than the sheet, or than its can is known to be", () => {
  expect(coatFactor(1.3, most(0.9))).toBe(1);
  expect(coatFactor(1, most(0.2))).toBe(1);
  expect(coatFactor(0.8, most(0.2))).toBe(0.8);
});

test("tacky at more than twice its time is a fault, and moves nothing", () => {
  expect(coatFactor(1, least(3))).toBe(1);
  expect(fitFactor([least(3), least(8)])).toBeCloseTo(1, 9);
});

test("one slow laying moves the can less than nine do", () => {
  // One span at 1.3 or more: slope x/0.25² + (x - ln 1.3)/0.15² = 0 at x = 0.2624 x 0.0625/(0.0625 + 0.0225) = 0.1929.
  expect(fitFactor([least(1.3)])).toBeCloseTo(Math.exp(0.192_915), 4);
  // Nine: 0.2624 x 0.0625/(0.0625 + 0.0225/9) = 0.2523.
  expect(fitFactor(Array.from({ length: 9 }, () => least(1.3)))).toBeCloseTo(Math.exp(0.252_273), 4);
});

test("the factor stays between a half and double, whatever the tests say", () => {
  const span = fc
    .tuple(fc.double({ min: 0.01, max: 50, noNaN: true }), fc.double({ min: 1, max: 20, noNaN: true }))
    .map(([from, times]) => ({ least: from, most: from * times }));
  fc.assert(
    fc.property(fc.array(span, { maxLength: 30 }), (spans) => {
      const factor = fitFactor(spans);
      expect(factor).toBeGreaterThanOrEqual(0.5);
      expect(factor).toBeLessThanOrEqual(2);
    }),
  );
});

test("the fit is the least of the penalty, as a search over a fine grid finds it", () => {
  const penalty = (log: number, spans: readonly FactorSpan[]) =>
    log ** 2 / 0.25 ** 2 +
    spans.reduce((sum, span) => {
      const low = Math.log(span.least);
      const high = Math.log(span.most);
      return sum + (Math.max(0, low - log, log - high) / 0.15) ** 2;
    }, 0);
  const spans = [least(1.2), { least: 1.4, most: 1.6 }, most(1.1), most(1.9)];
  const grid = Array.from({ length: 20_001 }, (_, index) => Math.log(0.5) + (index * Math.log(4)) / 20_000);
  const best = grid.reduce((one, other) => (penalty(other, spans) < penalty(one, spans) ? other : one));
  expect(Math.log(fitFactor(spans))).toBeCloseTo(best, 3);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { type Curing, cureRate } from "../../src/cure/cure-rate.ts";
import { CURES_BY } from "../../src/process/coat.ts";
import { anyAir } from "./any-air.ts";

const anyCuring: fc.Arbitrary<Curing> = fc.record({
  curesBy: fc.constantFrom(...CURES_BY),
  sheetAir: fc.record({
    celsius: fc.integer({ min: 15, max: 28 }),
    humidityPercent: fc.integer({ min: 30, max: 70 }),
  }),
  lowestCelsius: fc.option(fc.integer({ min: 5, max: 14 })),
  activationEnergy: fc.option(fc.integer({ min: 40, max: 70 })),
});

test("in the air of its sheet a coat goes on as its sheet says", () => {
  fc.assert(
    fc.property(anyCuring, (curing) => {
      expect(cureRate(curing, curing.sheetAir)).toBeCloseTo(1, 12);
    }),
  );
});

test("warmer air never slows a coat that cures by warmth", () => {
  fc.assert(
    fc.property(anyCuring, anyAir, fc.double({ min: 0, max: 30, noNaN: true }), (curing, air, more) => {
      fc.pre(curing.curesBy === "resin" || curing.curesBy === "solvent");
      const warmer = { ...air, celsius: air.celsius + more };
      expect(cureRate(curing, warmer)).toBeGreaterThanOrEqual(cureRate(curing, air));
    }),
  );
});

test("damper air never speeds a water-based coat, and never slows one that cures by moisture", () => {
  fc.assert(
    fc.property(anyCuring, anyAir, fc.double({ min: 0, max: 95, noNaN: true }), (curing, air, more) => {
      const damper = { ...air, humidityPercent: Math.min(100, air.humidityPercent + more) };
      const [before, now] = [cureRate(curing, air), cureRate(curing, damper)];
      if (curing.curesBy === "water") expect(now).toBeLessThanOrEqual(before);
      if (curing.curesBy === "moisture") expect(now).toBeGreaterThanOrEqual(before);
    }),
  );
});

test("below its lowest temperature nothing counts, at it everything does", () => {
  const varnish = {
    sheetAir: { celsius: 20, humidityPercent: 50 },
    lowestCelsius: 10,
    activationEnergy: null,
  };
  for (const curesBy of CURES_BY) {
    expect(cureRate({ ...varnish, curesBy }, { celsius: 9.99, humidityPercent: 50 })).toBe(0);
    expect(cureRate({ ...varnish, curesBy }, { celsius: 10, humidityPercent: 50 })).toBeGreaterThan(0);
  }
});

test("a water-based coat does not dry in air that is full of water", () => {
  const acrylic: Curing = {
    curesBy: "water",
    sheetAir: { celsius: 20, humidityPercent: 50 },
    lowestCelsius: null,
    activationEnergy: null,
  };
  expect(cureRate(acrylic, { celsius: 20, humidityPercent: 100 })).toBe(0);
  // Half the room for vapour that the sheet's air has: 25 of 50 %.
  expect(cureRate(acrylic, { celsius: 20, humidityPercent: 75 })).toBeCloseTo(0.5, 12);
});

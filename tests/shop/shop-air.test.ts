import { expect, test } from "vitest";
import type { AirHour, AirRow } from "../../src/journal/air.ts";
import { shopAir } from "../../src/shop/shop-air.ts";

const HOUR = 3_600_000;
const NOW = Date.UTC(2026, 3, 8, 19);
const FROM = NOW - 72 * HOUR;
const RACK = [{ at: FROM, place: "rack" }];

/** 20 °C by the sheet, and nothing below 12 °C. */
const curing = {
  curesBy: "resin",
  sheetAir: { celsius: 20, humidityPercent: 50 },
  lowestCelsius: 12,
  activationEnergy: null,
} as const;

const settings = { statedAir: new Map() };
const cold = (at: number): AirRow => ({ at, place: null, celsius: 9, humidityPercent: 60 });

/** Each hour of the day at 20 °C on a fortnight. */
const pattern: AirHour[] = Array.from({ length: 24 }, (_, hour) => ({
  place: null,
  hour,
  days: 14,
  celsius: 20,
  humidityPercent: 50,
  celsiusVariance: 1,
  humidityVariance: 25,
}));

test("a first reading says nothing of the days before it: a coat that dried by its sheet has dried", () => {
  const hung = shopAir([cold(NOW)], FROM, [], settings, 60).of(RACK);
  expect(hung.spent(curing, NOW - 24 * HOUR, NOW)).toBeCloseTo(24 * 60, 6);
  expect(hung.spent(curing, NOW, NOW + 2 * HOUR)).toBe(0);
});

test("a daily pattern tells of the days before the first reading at hand, and one cold evening does not chill them", () => {
  const colder = pattern.map((hour) => ({ ...hour, celsius: 8 }));
  const inCold = shopAir([cold(NOW)], FROM, colder, settings, 60).of(RACK);
  expect(inCold.spent(curing, NOW - 48 * HOUR, NOW)).toBe(0);
  const mild = shopAir([cold(NOW)], FROM, pattern, settings, 60).of(RACK);
  const dayBefore = mild.spent(curing, NOW - 48 * HOUR, NOW - 24 * HOUR);
  expect(dayBefore).toBeGreaterThan(0.9 * 24 * 60);
  expect(dayBefore).toBeLessThanOrEqual(24 * 60);
});

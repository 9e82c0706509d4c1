/** Dew point and vapour pressure against the ASHRAE equations and printed worked examples. */
import psychrolib from "psychrolib";
import { beforeAll, expect, test } from "vitest";
import { dewMargin } from "../../src/cure/fit-air.ts";
import { dewPoint, saturationPressure, vapourPressure, waterInAir } from "../../src/cure/humid-air.ts";
import { DEW_POINTS } from "./dew-point-table.ts";

const celsiusOf = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;

test("every dew point of the table at or above 0 °C comes out within 0.05 °C", () => {
  expect(DEW_POINTS).toHaveLength(108);
  const above = DEW_POINTS.filter(([, , published]) => published >= 0);
  for (const [celsius, humidityPercent, published] of above) {
    const dew = dewPoint({ celsius, humidityPercent });
    expect(Math.abs(dew - published), `${celsius} °C ${humidityPercent} %`).toBeLessThanOrEqual(0.05);
  }
  expect(above.length).toBeGreaterThan(70);
});

// Printed in whole degrees. The first two: "Ambient Application Conditions", a coating training sheet
// (scribd.com/document/146044552), and the dew point entry of a coating inspection glossary (elcometer.com); the others
// the worked examples of a dew point chart for coating (handypdf.com). Charts are coarse: within 1 degree.
test.each([
  [16, 71, 11],
  [30, 55, 20],
  [celsiusOf(75), 35, celsiusOf(45)],
  [celsiusOf(70), 65, celsiusOf(57)],
  [celsiusOf(80), 50, celsiusOf(59)],
])("printed example: %d °C and %d %% have their dew point at %d °C", (celsius, humidityPercent, printed) => {
  expect(Math.abs(dewPoint({ celsius, humidityPercent }) - printed)).toBeLessThan(0.6);
});

test("the training sheet's 13 °C surface in air of 16 °C 71 % is too cold to coat", () => {
  // Dew point 11 °C, so 2 °C above it where 3 °C (5 °F) are asked for: MIL-HDBK-1110, 9.6.6.
  expect(dewMargin({ celsius: 16, humidityPercent: 71 }, 13, 3)).toMatchObject({ isFit: false });
  expect(dewMargin({ celsius: 16, humidityPercent: 71 }, 14, 3)).toMatchObject({ isFit: true });
});

test("the chart's least surface temperature for 70 °F 65 % is 62 °F", () => {
  // 57 °F and 5 °F more, as printed; by the formula 57.7 °F and 3 °C (5.4 °F): 63.1 °F.
  const air = { celsius: celsiusOf(70), humidityPercent: 65 };
  expect(dewMargin(air, celsiusOf(64), 3).isFit).toBe(true);
  expect(dewMargin(air, celsiusOf(61), 3).isFit).toBe(false);
});

beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

test("vapour pressure and dew point agree with psychrolib over 5 to 40 °C and 5 to 95 %", () => {
  for (let celsius = 5; celsius <= 40; celsius += 2.5) {
    // ASHRAE's formulation against Magnus: within 0.25 %, over water.
    const saturated = psychrolib.GetSatVapPres(celsius) / 100;
    expect(Math.abs(saturationPressure(celsius) / saturated - 1)).toBeLessThan(0.0025);
    for (let humidityPercent = 5; humidityPercent <= 95; humidityPercent += 5) {
      const pressure = psychrolib.GetVapPresFromRelHum(celsius, humidityPercent / 100) / 100;
      expect(Math.abs(vapourPressure({ celsius, humidityPercent }) / pressure - 1)).toBeLessThan(0.0025);
      const dew = psychrolib.GetTDewPointFromRelHum(celsius, humidityPercent / 100);
      // Below 0 °C the reference gives frost points, over ice.
      if (dew < 0) continue;
      const difference = Math.abs(dewPoint({ celsius, humidityPercent }) - dew);
      expect(difference, `${celsius} °C ${humidityPercent} %`).toBeLessThan(0.05);
    }
  }
});

test("air of 20 °C 50 % holds 8.6 g of water in a cubic metre", () => {
  // By the law of ideal gases from psychrolib's pressure: 1169.6 Pa x 18.015 g/mol / (8.314 J/mol K x 293.15 K).
  const pressure = psychrolib.GetVapPresFromRelHum(20, 0.5);
  const grams = (pressure * 18.015_28) / (8.314_462_618 * 293.15);
  expect(waterInAir({ celsius: 20, humidityPercent: 50 })).toBeCloseTo(grams, 1);
  expect(grams).toBeCloseTo(8.6, 1);
});

test("air without moisture has no dew point", () => {
  expect(dewPoint({ celsius: 20, humidityPercent: 0 })).toBe(Number.NEGATIVE_INFINITY);
});

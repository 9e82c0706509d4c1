/**
 * Equivalent age and the temperature-time factor in changing temperature.
 * Equivalent age: te = sum of exp(-Q (1/Ta - 1/Ts)) dt, the form of ASTM C1074, Q = E / R.
 * Temperature-time factor (Nurse-Saul): M = sum of (Ta - T0) dt, nothing where Ta is below T0.
 */
import { expect, test } from "vitest";
import { staysAsRead } from "../../src/cure/air-ahead.ts";
import { AirDays } from "../../src/cure/air-days.ts";
import type { AirReading } from "../../src/cure/air-line.ts";
import { CureSum } from "../../src/cure/cure-sum.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";

const HOUR = 3_600_000;
const GAS = 0.008_314_462_618;

type History = readonly (readonly [hours: number, celsius: number])[];

// Six histories worked out apart from this program: hours at °C, Q in kelvin, °C of the sheet, hours by the sheet. No
// published figure of an equivalent age was found.
const histories: readonly History[] = [
  [[12, 10]],
  [[24, 15]],
  [
    [6, 15],
    [6, 20],
    [12, 25],
  ],
  [[1, 30]],
  [[24, 20]],
  [
    [8, 5],
    [16, 18],
  ],
];

const LAWS: readonly (readonly [q: number, sheet: number, hours: readonly number[]])[] = [
  [5000, 20, [6.570_15, 17.851_63, 26.436_54, 1.755_28, 24, 17.419_83]],
  [5000, 23, [5.527_62, 15.019_01, 22.241_69, 1.476_76, 20.191_78, 14.655_72]],
  [6500, 20, [5.483_95, 16.334_95, 27.488_59, 2.078_03, 24, 16.159_36]],
  [7216.3, 25, [3.329_13, 10.361_42, 18.561_05, 1.490_63, 15.882_77, 10.344_92]],
];

test.each(
  LAWS.flatMap(([q, sheet, ages]) =>
    histories.map((history, index) => ({ q, sheet, history, age: ages[index] })),
  ),
)("$history (hours at °C) by a sheet of $sheet °C, Q $q, are $age h", ({ q, sheet, history, age }) => {
  const readings = readStepped(history);
  const ahead = staysAsRead(readings.at(-1) ?? { at: 0, celsius: sheet, humidityPercent: 50 });
  const air = new ShopAir(new Map([["", { since: 0, readings, ahead }]])).of([{ at: 0, place: "rack" }]);
  const curing = {
    curesBy: "resin",
    sheetAir: { celsius: sheet, humidityPercent: 50 },
    lowestCelsius: null,
    activationEnergy: q * GAS,
  } as const;
  const hours = history.reduce((sum, [length]) => sum + length, 0);
  expect(air.spent(curing, 0, hours * HOUR) / 60).toBeCloseTo(age ?? Number.NaN, 3);
  // And the other way round: so many minutes by the sheet are reached when the history ends, up to a whole minute.
  expect(Math.abs(air.reach(curing, 0, (age ?? 0) * 60) - hours * HOUR)).toBeLessThanOrEqual(60_000);
});

/** The factor in °C hours, by the same sums as coats come on by. */
function temperatureTime(history: History, datum: number): number {
  const readings = readStepped(history);
  const ahead = staysAsRead(readings.at(-1) ?? { at: 0, celsius: datum, humidityPercent: 50 });
  const law = { rateIn: ({ celsius }: { celsius: number }) => celsius - datum, lowest: datum };
  const sum = new CureSum(law, new AirDays({ since: 0, readings, ahead }));
  const hours = history.reduce((all, [length]) => all + length, 0);
  return sum.spent(0, hours * HOUR) / 60;
}

test("28 days at 15 °C from -11 °C on are 728 °C days, as published", () => {
  // civinnovate.com, quality control of concrete, a worked example of the maturity method: 28 x (15 + 11).
  expect(temperatureTime([[28 * 24, 15]], -11) / 24).toBeCloseTo(728, 6);
});

// The same six histories, in °C hours from 0 °C and from -10 °C on, worked out apart from this program.
test.each([
  [0, [120, 360, 510, 30, 480, 328]],
  [-10, [240, 600, 750, 40, 720, 568]],
])("from %d °C on the histories have their temperature-time factors", (datum, factors) => {
  expect(histories.map((history) => Math.round(temperatureTime(history, datum) * 100) / 100)).toEqual(
    factors,
  );
});

test("time below the datum counts nothing", () => {
  // 6 h at 5 °C, 6 h at 15 °C, from 10 °C on: 30 °C hours.
  expect(
    temperatureTime(
      [
        [6, 5],
        [6, 15],
      ],
      10,
    ),
  ).toBeCloseTo(30, 4);
});

/** Readings that step from one temperature to the next within a millisecond. */
function readStepped(history: History): AirReading[] {
  let at = 0;
  return history.flatMap(([hours, celsius], index) => {
    const from = at + (index === 0 ? 0 : 1);
    at += hours * HOUR;
    return [from, at].map((moment) => ({ at: moment, celsius, humidityPercent: 50 }));
  });
}

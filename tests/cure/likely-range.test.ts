import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type AirAhead, SURE, staysAsRead } from "../../src/cure/air-ahead.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";
import { likelyRange } from "../../src/cure/likely-range.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { makeCoat, resin, varnish } from "../fixtures/walker.ts";
import { anyLine } from "./any-air.ts";

const unfelt = { least: 0, most: Number.POSITIVE_INFINITY };

function dryingAt(celsius: number, factor = 1, unsure: AirAhead["unsure"] = SURE) {
  const reading = { at: 0, celsius, humidityPercent: 50 };
  const line = { since: 0, readings: [reading], ahead: { ...staysAsRead(reading), unsure } };
  return { air: new ShopAir(new Map([["", line]])).of([{ at: 0, place: "rack" }]), factor };
}

const inMinutes = (range: ReturnType<typeof likelyRange>) =>
  range && [range.from, range.likely, range.to].map((moment) => moment / MINUTE);

test("at its sheet's own air a coat of 12 h is a seventh either way unsure: 10 h 12 to 13 h 48", () => {
  // 720 x 0.85 = 612, 720 x 1.15 = 828, told to five minutes outward.
  expect(inMinutes(likelyRange(varnish, 0, 720, dryingAt(20), unfelt))).toEqual([610, 720, 830]);
});

test("a resin at 25 °C whose sheet tells no energy is unsure by the range published for epoxies, too", () => {
  // 55, 60 and 70 kJ/mol from 20 to 25 °C: 1.4600, 1.5110 and 1.6187 times as fast, 1,440 min are 986.3, 953.0 and 889.6.
  // A seventh of 953 is 143: before by the root of 143² + 63.4² = 156.4, after by the root of 143² + 33.3² = 146.8, to 1,099.8.
  expect(inMinutes(likelyRange(resin, 0, 1_440, dryingAt(25), unfelt))).toEqual([795, 953, 1_100]);
  const told = makeCoat("told", { curesBy: "resin", activationEnergy: 60 });
  // 953.0 x 0.85 = 810.1, x 1.15 = 1,096.
  expect(inMinutes(likelyRange(told, 0, 1_440, dryingAt(25), unfelt))).toEqual([810, 953, 1_100]);
});

test("a solvent is unsure from ours to the energy by which butyl acetate evaporates", () => {
  // 30 and 43 kJ/mol (enthalpy of vaporization, NIST Chemistry WebBook) from 20 to 30 °C: 1.5006 and 1.7896 times as fast:
  // 479.8 and 402.3 min, 77.5 before; a seventh is 72: the root of 72² + 77.5² is 105.8, 374 after; 552 at the latest.
  expect(inMinutes(likelyRange(varnish, 0, 720, dryingAt(30), unfelt))).toEqual([370, 480, 555]);
});

test("touches of this very coat leave less open: tacky at 1.1 times its time, dry at 1.2", () => {
  const felt = { least: 1.1, most: 1.2 };
  // It is taken at 1.15: 828, at the least 1.1 x 720 = 792, at the most 1.2 x 720 = 864.
  expect(inMinutes(likelyRange(varnish, 0, 720, dryingAt(20, 1.15), felt))).toEqual([790, 828, 865]);
});

describe("weather other than expected", () => {
  test("makes a varnish of 12 h unsure by what 3 °C more or less do to it, more of it the further ahead", () => {
    // By 30 kJ/mol from 20 °C: 23 °C 1.1328 times as fast, 17 °C 0.8806 times. Were it 3 °C from the first hour on, 720 min
    // were 636 to 818; but after t hours the share sqrt(1 - 0.25^(t/6)) of it is expected, in the middle of the 12 h
    // 0.87, in the mean of them 0.79. With a seventh: the root of 108² + 66² is 127, of 108² + 77² 133.
    const range = inMinutes(likelyRange(varnish, 0, 720, dryingAt(20, 1, off(3)), unfelt));
    expect(range?.[0]).toBeGreaterThanOrEqual(590);
    expect(range?.[0]).toBeLessThanOrEqual(600);
    expect(range?.[2]).toBeGreaterThanOrEqual(845);
    expect(range?.[2]).toBeLessThanOrEqual(860);
  });

  test("may leave a coat near its lowest temperature wet for nobody knows how long", () => {
    // At 11 °C, and its lowest is 10 °C: 3 °C colder it never comes on.
    const range = likelyRange(varnish, 0, 720, dryingAt(11, 1, off(3)), unfelt);
    expect(range?.likely).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(range?.to).toBe(Number.POSITIVE_INFINITY);
  });

  test("does nothing to what has been read already", () => {
    // 20 °C was read every hour of the day in which it dried.
    const readings = Array.from({ length: 25 }, (_, hour) => ({ ...at20, at: hour * 60 * MINUTE }));
    const ahead = { ...staysAsRead(readings[24] ?? at20), unsure: off(3) };
    const air = new ShopAir(new Map([["", { since: 0, readings, ahead }]])).of([{ at: 0, place: "rack" }]);
    expect(inMinutes(likelyRange(varnish, 0, 720, { air, factor: 1 }, unfelt))).toEqual([610, 720, 830]);
  });
});

const off = (celsius: number) => ({ celsius, humidityPercent: 10 });
const at20 = { at: 0, celsius: 20, humidityPercent: 50 };

test("in air in which it never cures there is no moment", () => {
  expect(likelyRange(varnish, 0, 720, dryingAt(5), unfelt)).toBeNull();
});

test("the likely moment lies in its range, in any air", () => {
  fc.assert(
    fc.property(
      anyLine,
      fc.constantFrom(varnish, resin),
      fc.double({ min: 0.5, max: 2, noNaN: true }),
      (line, coat, factor) => {
        const air = new ShopAir(new Map([["", line]])).of([{ at: 0, place: "rack" }]);
        const range = likelyRange(coat, 0, 600, { air, factor }, unfelt);
        if (range === null) return;
        expect(range.from).toBeLessThanOrEqual(range.likely);
        expect(range.to).toBeGreaterThanOrEqual(range.likely);
      },
    ),
  );
});

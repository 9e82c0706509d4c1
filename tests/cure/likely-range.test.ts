import fc from "fast-check";
import { expect, test } from "vitest";
import { staysAsRead } from "../../src/cure/air-ahead.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";
import { likelyRange } from "../../src/cure/likely-range.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { makeCoat, resin, varnish } from "../fixtures/walker.ts";
import { anyLine } from "./any-air.ts";

const unfelt = { least: 0, most: Number.POSITIVE_INFINITY };

function dryingAt(celsius: number, factor = 1) {
  const reading = { at: 0, celsius, humidityPercent: 50 };
  const line = { since: 0, readings: [reading], ahead: staysAsRead(reading) };
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

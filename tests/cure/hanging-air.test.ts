import fc from "fast-check";
import { expect, test } from "vitest";
import { statedDay, staysAsRead } from "../../src/cure/air-ahead.ts";
import { type AirLine, type AirReading, sortReadings } from "../../src/cure/air-line.ts";
import type { Curing } from "../../src/cure/cure-rate.ts";
import { SHEET_AIR, ShopAir } from "../../src/cure/hanging-air.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { anyLine } from "./any-air.ts";

const HOUR = 60 * MINUTE;
const RACK = [{ at: 0, place: "rack" }];

const varnish: Curing = {
  curesBy: "solvent",
  sheetAir: { celsius: 20, humidityPercent: 50 },
  lowestCelsius: 10,
  activationEnergy: null,
};
const acrylic: Curing = { ...varnish, curesBy: "water", lowestCelsius: null };

const read = (at: number, celsius: number): AirReading => ({ at, celsius, humidityPercent: 50 });

function shopAir(readings: readonly AirReading[]): ShopAir {
  const last = readings.at(-1);
  if (last === undefined) throw new Error("a line of readings needs one");
  return new ShopAir(new Map([["", { since: readings[0]?.at ?? 0, readings, ahead: staysAsRead(last) }]]));
}

test("where no air is known a coat goes by its sheet", () => {
  expect(new ShopAir(new Map()).of(RACK)).toBe(SHEET_AIR);
  expect(SHEET_AIR.reach(varnish, 0, 240)).toBe(4 * HOUR);
  expect(SHEET_AIR.spent(varnish, 0, 4 * HOUR)).toBe(240);
});

test("a cold night does not count, and what comes after it does", () => {
  // 20 °C until 22:00 (minute 75), 9 °C until 08:00 (minute 675), 20 °C again from the next minute: of 12 h 75 min
  // count before the night and 645 after it, so dry-hard is 675 + 645 = minute 1320, and a minute or so of change.
  const air = shopAir([
    read(0, 20),
    read(74 * MINUTE, 20),
    read(75 * MINUTE, 9),
    read(675 * MINUTE, 9),
    read(676 * MINUTE, 20),
  ]).of(RACK);
  expect(Math.abs(air.reach(varnish, 0, 720) - 1320 * MINUTE)).toBeLessThanOrEqual(2 * MINUTE);
  expect(air.spent(varnish, 100 * MINUTE, 600 * MINUTE)).toBe(0);
});

test("a garage that stays too cold never lets it cure", () => {
  expect(
    shopAir([read(0, 5)])
      .of(RACK)
      .reach(varnish, 0, 1),
  ).toBe(Number.POSITIVE_INFINITY);
});

test("counts from the very moment of a hang, as a sheet does: what opens at once is open at once", () => {
  // 20 °C is the varnish's own air: 60 min are 60 min, though it was hung 23 seconds past the minute.
  const air = shopAir([read(0, 20)]).of(RACK);
  const hung = 5 * MINUTE + 23_000;
  expect(air.reach(varnish, hung, 0)).toBe(hung);
  expect(air.reach(varnish, hung, 60)).toBe(hung + 60 * MINUTE);
});

test("time before the first reading goes by the sheet", () => {
  const air = shopAir([read(10 * HOUR, 5)]).of(RACK);
  expect(air.reach(varnish, 0, 600)).toBe(10 * HOUR);
  expect(air.reach(varnish, 0, 601)).toBe(Number.POSITIVE_INFINITY);
  expect(air.spent(varnish, 9 * HOUR, 11 * HOUR)).toBe(60);
});

test("a piece that is moved goes on in the air of its new place", () => {
  // 5 °C on the rack, 20 °C in the box: nothing for two hours, then by the sheet.
  const stays = (celsius: number) => ({
    since: 0,
    readings: [read(0, celsius)],
    ahead: staysAsRead(read(0, celsius)),
  });
  const air = new ShopAir(
    new Map([
      ["", stays(5)],
      ["warm box", stays(20)],
    ]),
  ).of([
    { at: 0, place: "rack" },
    { at: 2 * HOUR, place: "warm box" },
  ]);
  expect(air.reach(varnish, 0, 60)).toBe(3 * HOUR);
  expect(air.spent(varnish, HOUR, 4 * HOUR)).toBe(120);
});

test("a stated day is coldest at five in the morning and warmest at three in the afternoon", () => {
  // 8 to 22 °C: 14 degrees of the way from 11 h on; below 10 °C for some hours around five.
  const ahead = statedDay({ low: 8, high: 22, humidityPercent: 50 }, 0);
  expect(ahead.byHour[5]?.celsius).toBeCloseTo(8, 9);
  expect(ahead.byHour[15]?.celsius).toBeCloseTo(22, 9);
  expect(ahead.byHour[10]?.celsius).toBeCloseTo(15, 9);
  const air = new ShopAir(new Map([["", { since: 0, readings: [], ahead }]])).of(RACK);
  expect(air.spent(varnish, 4 * HOUR, 6 * HOUR)).toBe(0);
  expect(air.spent(varnish, 0, 24 * HOUR)).toBeGreaterThan(600);
});

test("progress never runs backward, and a later start never opens earlier", () => {
  const curings = fc.constantFrom(varnish, acrylic);
  const minute = fc.integer({ min: 0, max: 4_000 });
  fc.assert(
    fc.property(
      anyLine,
      curings,
      minute,
      minute,
      fc.integer({ min: 1, max: 2_000 }),
      (line, curing, one, other, needs) => {
        const air = new ShopAir(new Map([["", line]])).of(RACK);
        const [first, later] = [Math.min(one, other) * MINUTE, Math.max(one, other) * MINUTE];
        expect(air.spent(curing, 0, later)).toBeGreaterThanOrEqual(air.spent(curing, 0, first) - 1e-9);
        expect(air.reach(curing, later, needs)).toBeGreaterThanOrEqual(air.reach(curing, first, needs));
        expect(air.reach(curing, first, needs)).toBeGreaterThanOrEqual(first);
      },
    ),
  );
});

test("one sweep over many beginnings says of each what is said of it alone", () => {
  fc.assert(
    fc.property(
      anyLine,
      fc.array(fc.integer({ min: 0, max: 5_000 }), { minLength: 1, maxLength: 30 }),
      fc.integer({ min: 1, max: 2_000 }),
      (line, begun, needs) => {
        const air = new ShopAir(new Map([["", line]]));
        const moments = begun.toSorted((a, b) => a - b).map((minute) => minute * MINUTE);
        for (const curing of [varnish, acrylic]) {
          expect(air.reachEach(curing, "rack", needs, moments)).toEqual(
            moments.map((moment) => air.of(RACK).reach(curing, moment, needs)),
          );
        }
      },
    ),
  );
});

test("a coat that is said to dry steadily dries as long from every moment on", () => {
  const steady = { since: 0, readings: [], ahead: staysAsRead({ at: 0, celsius: 21, humidityPercent: 40 }) };
  const changing = { ...steady, ahead: statedDay({ low: 10, high: 20, humidityPercent: 50 }, 0) };
  const moments = fc.array(fc.integer({ min: 0, max: 10 * 24 * 60 }), { minLength: 2 });
  const anyCoat = fc.constantFrom(varnish, acrylic);
  const isSteady = (line: AirLine, coat: Curing, from: number) =>
    new ShopAir(new Map([["", line]])).isSteadyFrom(coat, "rack", from);
  expect(isSteady(steady, varnish, 0)).toBe(true);
  expect(isSteady(changing, varnish, 0)).toBe(false);
  // By the clock all air is the same to it, but not air too cold for it.
  expect(isSteady(changing, { ...varnish, curesBy: "clock", lowestCelsius: null }, 0)).toBe(true);
  expect(isSteady(changing, { ...varnish, curesBy: "clock", lowestCelsius: 12 }, 0)).toBe(false);
  fc.assert(
    fc.property(fc.oneof(anyLine, fc.constant(steady)), anyCoat, moments, (line, coat, minutes) => {
      const air = new ShopAir(new Map([["", line]]));
      const from = minutes.map((minute) => minute * MINUTE);
      if (!isSteady(line, coat, Math.min(...from))) return;
      const reached = from.map(
        (moment) => air.of([{ at: 0, place: "rack" }]).reach(coat, moment, 90) - moment,
      );
      expect(new Set(reached).size).toBe(1);
    }),
  );
});

test("what is reached has been spent: the two ways of asking agree within a minute", () => {
  fc.assert(
    fc.property(
      anyLine,
      fc.integer({ min: 0, max: 4_000 }),
      fc.integer({ min: 1, max: 2_000 }),
      (line, from, needs) => {
        // Warm in the end, so that it is reached at all.
        const ahead = staysAsRead(read(0, 20));
        const air = new ShopAir(new Map([["", { ...line, ahead }]])).of(RACK);
        const reached = air.reach(varnish, from * MINUTE, needs);
        expect(air.spent(varnish, from * MINUTE, reached)).toBeGreaterThanOrEqual(needs - 1e-6);
        expect(air.spent(varnish, from * MINUTE, reached - MINUTE)).toBeLessThanOrEqual(needs + 1e-6);
      },
    ),
  );
});

test("readings in any order give the same line", () => {
  fc.assert(
    fc.property(
      anyLine.chain(({ readings }) =>
        fc.tuple(fc.constant(readings), fc.shuffledSubarray([...readings], { minLength: readings.length })),
      ),
      ([inOrder, shuffled]) => {
        expect(sortReadings(shuffled)).toEqual(inOrder);
      },
    ),
  );
});

test("a reading more gives what all readings at once give, whatever was asked between", () => {
  fc.assert(
    fc.property(anyLine, fc.nat({ max: 30 }), fc.integer({ min: 0, max: 4_000 }), (line, cut, minute) => {
      const { readings } = line;
      const some = readings.slice(0, Math.max(1, cut % (readings.length + 1)));
      const earlier = { ...line, readings: some, ahead: staysAsRead(some.at(-1) ?? read(0, 20)) };
      const first = new ShopAir(new Map([["", earlier]]));
      for (const curing of [varnish, acrylic]) first.of(RACK).reach(curing, 0, minute);
      const then = new ShopAir(new Map([["", line]]), first).of(RACK);
      const atOnce = new ShopAir(new Map([["", line]])).of(RACK);
      for (const curing of [varnish, acrylic]) {
        const spent = then.spent(curing, 0, minute * MINUTE);
        expect(spent).toBeCloseTo(atOnce.spent(curing, 0, minute * MINUTE), 6);
      }
    }),
  );
});

test("a reading that is corrected, or comes late, is not lost on what was summed before", () => {
  const lineOf = (readings: readonly AirReading[]) =>
    new Map([["", { since: 0, readings, ahead: staysAsRead(read(0, 20)) }]]);
  const before = new ShopAir(lineOf([read(0, 20), read(2 * HOUR, 20), read(4 * HOUR, 20)]));
  expect(before.of(RACK).spent(varnish, 0, 4 * HOUR)).toBeCloseTo(240, 9);
  const corrected = [read(0, 20), read(2 * HOUR, 5), read(4 * HOUR, 20)];
  const late = [read(0, 20), read(HOUR, 5), read(2 * HOUR, 20), read(4 * HOUR, 20)];
  for (const readings of [corrected, late]) {
    const then = new ShopAir(lineOf(readings), before).of(RACK).spent(varnish, 0, 4 * HOUR);
    const atOnce = new ShopAir(lineOf(readings)).of(RACK).spent(varnish, 0, 4 * HOUR);
    expect(then).toBe(atOnce);
    expect(then).toBeLessThan(230);
  }
});

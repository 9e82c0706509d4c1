import fc from "fast-check";
import { expect, test } from "vitest";
import { fitAgainAt, unfitAir, unfitStretches } from "../../src/safety/air-for-coat.ts";
import { after } from "../../src/time/instant.ts";
import { anyLine } from "../cure/any-air.ts";
import { Diary } from "../fixtures/diary.ts";
import { coldNights, everyDay, inAir } from "../fixtures/shop-in-air.ts";
import { makeCoat, varnish, walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

const bare = new Diary(walker).shop();
const evening = at("Mon 18:00");
const TWO_DAYS = 2_880;
const laying = { coat: varnish, place: "rack", minutes: 6 };

test("a varnish of 10 °C or more, dust-free in 45 min, is not laid from 45 min before the cold on", () => {
  const shop = inAir(bare, coldNights);
  // Cold from 20:40 to 7:20. Looked at each quarter: cold at 20:45, so wet in the cold from 20:00 on; not cold at 7:30, and
  // told to the minute from 7:21 on: at 7:20 itself it is 10 °C but for a rounding.
  // From 18:00 that is 120 to 801 min, and again a day later.
  const nights = [
    [120, 801],
    [1_560, 2_241],
  ];
  expect(unfitStretches(shop, evening, TWO_DAYS)(varnish, "rack")).toEqual(nights);
  expect(unfitAir(laying, shop, at("Mon 19:45"))).toBeNull();
  expect(unfitAir(laying, shop, at("Mon 20:00"))).toMatchObject({
    is: "too cold",
    isAhead: true,
    at: at("Mon 20:45"),
    celsius: 9,
    lowestCelsius: 10,
  });
  expect(unfitAir(laying, shop, at("Mon 22:00"))).toMatchObject({
    is: "too cold",
    isAhead: false,
    celsius: 6,
  });
  expect(fitAgainAt(laying, shop, at("Mon 20:00"))).toBe(at("Tue 7:21"));
});

test("when air is fit again is told to the minute, and stays so however long one waits for it", () => {
  const shop = inAir(bare, coldNights);
  for (const when of ["Mon 21:00", "Mon 23:07", "Tue 6:59", "Tue 7:20"]) {
    expect(fitAgainAt(laying, shop, at(when))).toBe(at("Tue 7:21"));
  }
});

test("air that stays unfit for more than two days is fit again at no moment that is told", () => {
  const hour = (of: number) => after(evening, of * 60);
  const coldFor = (hours: number) => {
    const cold = Array.from({ length: hours + 1 }, (_, of) => ({ at: hour(of), celsius: 5 }));
    const readings = [...cold, { at: hour(hours + 1), celsius: 18 }];
    return { ...everyDay(() => 18), readings: readings.map((one) => ({ ...one, humidityPercent: 40 })) };
  };
  // From 5 to 18 °C within the hour: at 10 °C after 5/13 of it, 23 min.
  expect(fitAgainAt(laying, inAir(bare, coldFor(47)), evening)).toBe(after(hour(47), 24));
  expect(fitAgainAt(laying, inAir(bare, coldFor(48)), evening)).toBeNull();
});

test("a fortnight ahead, too, plans keep out of just the quarters of an hour in which a coat would be refused", () => {
  // A cold evening fades into days that are alike.
  const last = { at: evening, celsius: 8, humidityPercent: 40 };
  const line = { ...coldNights, readings: [last], ahead: { ...coldNights.ahead, last } };
  const shop = inAir(bare, line);
  const fortnight = 14 * 1_440;
  const stretches = unfitStretches(shop, evening, fortnight)(varnish, "rack");
  // Fourteen nights, into the first of which the cold evening runs.
  expect(stretches).toHaveLength(14);
  for (let minute = 0; minute < fortnight; minute += 15) {
    const isKeptOut = stretches.some(([begins, ends]) => begins <= minute && ends > minute);
    expect([minute, unfitAir(laying, shop, after(evening, minute)) !== null]).toEqual([minute, isKeptOut]);
  }
});

test("hung in a warm box it may be laid as long as the shop is warm enough to lay it", () => {
  const shop = inAir(bare, coldNights, { "warm box": everyDay(() => 27) });
  // 20:30 at 12 °C will do, 20:45 at 9 °C will not: 165 min from 18:00.
  expect(unfitStretches(shop, evening, 1_440)(varnish, "warm box")).toEqual([[165, 801]]);
});

test("work that reaches into the cold is not begun before it", () => {
  const shop = inAir(bare, coldNights);
  // Fit to begin up to the quarter of 19:45 to 20:00: 16 min from 19:45 reach into the next.
  expect(unfitAir({ ...laying, minutes: 15 }, shop, at("Mon 19:45"))).toBeNull();
  expect(unfitAir({ ...laying, minutes: 16 }, shop, at("Mon 19:45"))).not.toBeNull();
});

test("a coat's own highest temperature and humidity count too, and dew, which no coat names", () => {
  const hot = inAir(
    bare,
    everyDay(() => 31),
  );
  expect(unfitAir({ ...laying, coat: makeCoat("thin", { highestCelsius: 30 }) }, hot, evening)).toMatchObject(
    {
      is: "too warm",
      celsius: 31,
      highestCelsius: 30,
    },
  );
  const damp = inAir(
    bare,
    everyDay(() => 20, 80),
  );
  // 20 °C and 80 % have their dew point at 16.4 °C (Magnus): 3.6 °C apart are enough, but not for a coat of 75 %.
  expect(unfitAir(laying, damp, evening)).toBeNull();
  expect(
    unfitAir({ ...laying, coat: makeCoat("shellac", { dampestPercent: 75 }) }, damp, evening),
  ).toMatchObject({
    is: "too damp",
    humidityPercent: 80,
    dampestPercent: 75,
  });
  // At 90 % it is 18.3 °C: 1.7 °C apart.
  const dewy = inAir(
    bare,
    everyDay(() => 20, 90),
  );
  expect(unfitAir({ ...laying, coat: makeCoat("any") }, dewy, evening)).toMatchObject({
    is: "dew",
    wanted: 3,
  });
});

test("where nothing is known of the air, nothing is unfit", () => {
  expect(unfitStretches(bare, evening, TWO_DAYS)(varnish, "rack")).toEqual([]);
  expect(unfitAir(laying, bare, evening)).toBeNull();
});

test("what is planned and what is refused agree at every quarter of an hour, in any air", () => {
  fc.assert(
    fc.property(anyLine, fc.integer({ min: 0, max: 4_000 }), fc.nat(100), (line, minute, quarter) => {
      const shop = inAir(bare, line);
      const from = after(0, minute);
      const stretches = unfitStretches(shop, from, 1_530)(varnish, "rack");
      const here = stretches.find(([begins, ends]) => begins <= quarter * 15 && ends > quarter * 15);
      const moment = after(from, quarter * 15);
      expect(unfitAir(laying, shop, moment) !== null).toBe(here !== undefined);
      // A stretch that ends within what was looked at ends when the air is said to be fit again.
      if (here === undefined || here[1] >= 1_530) return;
      const again = after(from, here[1]);
      expect(fitAgainAt(laying, shop, moment)).toBe(again);
      expect(unfitAir(laying, shop, again)).toBeNull();
    }),
  );
});

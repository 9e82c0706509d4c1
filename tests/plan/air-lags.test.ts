import fc from "fast-check";
import { expect, test } from "vitest";
import { statedDay, staysAsRead } from "../../src/cure/air-ahead.ts";
import { coatTimes } from "../../src/cure/coat-times.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";
import { lagsIn } from "../../src/plan/air-lags.ts";
import { openingAfter, shutAfter } from "../../src/plan/lag.ts";
import type { ShopFacts } from "../../src/plan/plan-shop.ts";
import type { Coat } from "../../src/process/coat.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { anyLine } from "../cure/any-air.ts";
import { acrylic, resin, varnish } from "../fixtures/walker.ts";

const HORIZON = 5_000;
const QUARTER = 15;

/** The part of a shop's facts that lags are made of: now is moment 0, and everything hangs in this air. */
function factsIn(air: ShopAir | null, horizon = HORIZON): ShopFacts {
  return {
    context: { now: 0 },
    horizon,
    lags: new Map(),
    airAt: () =>
      air && {
        isSteady: (coat: Coat) => air.isSteadyFrom(coat, "rack", 0),
        reachEach: (coat: Coat, minutes: number, moments: readonly number[]) =>
          air.reachEach(coat, "rack", minutes, moments),
      },
  } as unknown as ShopFacts;
}

test("where the air is not known a lag is the minutes of the sheet", () => {
  const lags = lagsIn(factsIn(null), varnish, "rack");
  expect(lags.opens(240, 0)).toBe(240);
  expect(lags.opens(240, 300)).toBe(300);
  // The last whole minute before 24 h.
  expect(lags.shuts(1_440)).toBe(1_439);
});

/** After its last reading the air comes nearer and nearer to the same warm days and cold nights. */
const anyLineToDays = fc
  .tuple(anyLine, fc.integer({ min: -5, max: 20 }), fc.integer({ min: 0, max: 15 }))
  .map(([line, low, warmer]) => ({
    ...line,
    ahead: { ...statedDay({ low, high: low + warmer, humidityPercent: 55 }, 0), last: line.ahead.last },
  }));

const anyCoat = fc.constantFrom(varnish, acrylic, resin);
const minutes = fc.integer({ min: 1, max: 1_500 });

test("a later start never opens earlier, nor shuts earlier", () => {
  fc.assert(
    fc.property(anyLine, anyCoat, minutes, (line, coat, wait) => {
      const lags = lagsIn(factsIn(new ShopAir(new Map([["", line]]))), coat, "rack");
      for (const lag of [lags.opens(wait, 0), lags.shuts(wait)]) {
        // Air that never changes.
        if (typeof lag === "number") continue;
        const reached = lag.reached.map((minute) => minute ?? Number.POSITIVE_INFINITY);
        expect(reached.every((minute, index) => index === 0 || minute >= (reached[index - 1] ?? 0))).toBe(
          true,
        );
      }
    }),
  );
});

test("nothing is planned before the coat lets it, nor after, and no more than an entry of the table is lost", () => {
  fc.assert(
    fc.property(anyLine, fc.integer({ min: 0, max: HORIZON - QUARTER }), (line, begun) => {
      const air = new ShopAir(new Map([["", line]]));
      const lags = lagsIn(factsIn(air), varnish, "rack");
      // Laid at `begun`: its first window, as it really opens and shuts in this air.
      const times = (at: number) =>
        coatTimes(varnish, at * MINUTE, null, { air: air.of([{ at: 0, place: "rack" }]), factor: 1 })
          .windows[0];
      const really = times(begun);
      const [opens, shuts] = [openingAfter(lags.opens(240, 0), begun), shutAfter(lags.shuts(1_440), begun)];
      expect(opens).toBeGreaterThanOrEqual((really?.opens ?? 0) / MINUTE);
      const last = (really?.shuts ?? Number.POSITIVE_INFINITY) / MINUTE;
      expect(shuts < last || last === Number.POSITIVE_INFINITY).toBe(true);
      expect(opens).toBeLessThanOrEqual((times(Math.ceil(begun / QUARTER) * QUARTER)?.opens ?? 0) / MINUTE);
    }),
  );
});

test("air that stays as it is gives plain minutes, reckoned once for all pieces that wear the coat", () => {
  const reading = { at: 0, celsius: 30, humidityPercent: 50 };
  const line = { since: 0, readings: [reading], ahead: staysAsRead(reading) };
  const facts = factsIn(new ShopAir(new Map([["", line]])));
  // 12 h by 30 kJ/mol at 30 °C: exp(30 / 0.0083145 x (1 / 293.15 - 1 / 303.15)) = 1.501 times as fast.
  expect(lagsIn(facts, varnish, "rack").opens(720, 0)).toBe(480);
  expect(lagsIn(facts, varnish, "rack")).toBe(lagsIn(facts, varnish, "rack"));
});

test("an entry asked for alone is that of the whole table, which is what a copy for another thread holds", () => {
  fc.assert(
    fc.property(
      fc.oneof(anyLine, anyLineToDays),
      anyCoat,
      minutes,
      fc.array(fc.nat(1_000)),
      (line, coat, wait, asked) => {
        const lagsThere = () => lagsIn(factsIn(new ShopAir(new Map([["", line]])), 14_400), coat, "rack");
        for (const lagOf of [() => lagsThere().opens(wait, 30), () => lagsThere().shuts(wait)]) {
          const [lag, whole] = [lagOf(), lagOf()];
          if (typeof lag === "number" || typeof whole === "number") {
            expect(lag).toBe(whole);
            continue;
          }
          const copy = structuredClone(whole);
          expect(Object.keys(copy)).toEqual(["every", "reached"]);
          expect(asked.map((entry) => lag.endAt?.(entry))).toEqual(
            asked.map((entry) => copy.reached[entry] ?? null),
          );
        }
      },
    ),
  );
});

test("days that are alike are reckoned once: two weeks ahead no wait is a minute off", () => {
  const cold = { at: 0, celsius: 6, humidityPercent: 80 };
  const ahead = { ...statedDay({ low: 12, high: 24, humidityPercent: 55 }, 0), last: cold };
  const air = new ShopAir(new Map([["", { since: 0, readings: [cold], ahead }]]));
  const days = 14;
  const lag = lagsIn(factsIn(air, days * 1_440), resin, "rack").opens(1_440, 0);
  if (typeof lag === "number") throw new Error("the air changes by the hour");
  expect(lag.reached).toHaveLength(days * 96 + 1);
  for (const [index, reached] of lag.reached.entries()) {
    const really = air.of([{ at: 0, place: "rack" }]).reach(resin, index * QUARTER * MINUTE, 1_440) / MINUTE;
    expect(Math.abs((reached ?? 0) - really)).toBeLessThanOrEqual(1);
  }
});

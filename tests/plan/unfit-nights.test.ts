import fc from "fast-check";
import { expect, test } from "vitest";
import { readShop } from "../../src/plan/plan-shop.ts";
import { problemToPlan } from "../../src/plan/problem-to-plan.ts";
import { beginSearch } from "../../src/plan/search/search.ts";
import { whatNow } from "../../src/plan/what-now.ts";
import { hoursOf } from "../../src/shop/settings-at.ts";
import type { Shop } from "../../src/shop/shop.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { anyLine } from "../cure/any-air.ts";
import { Diary } from "../fixtures/diary.ts";
import { coldNights, inAir } from "../fixtures/shop-in-air.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { contextAt, saidRows } from "./ask-now.ts";

/** 1 poured on Monday at noon: its sealer is the next, varnish of 10 °C or more. */
function toSeal(): Shop {
  const diary = new Diary(walker);
  diary.came(1, "pour the ballast", "Mon 12:00", "Mon 12:00");
  return diary.shop();
}

const context = (when: string) => contextAt(when, { hours: hoursOf({ hours: null }) });

test("the sealer is work till 20:00, and after that held until the next evening, when it is fit again", () => {
  const shop = inAir(toSeal(), coldNights);
  expect(saidRows(whatNow(shop, context("Mon 19:45")).work)).toEqual(["1 seal"]);
  const { work, held } = whatNow(shop, context("Mon 20:05"));
  expect(work).toEqual([]);
  expect(held).toMatchObject([
    { tags: [1], step: "seal", until: at("Tue 18:00"), because: { code: "unfit air" } },
  ]);
});

test("a plan lays no coat in a night to come, though the bench is open all day and night", () => {
  const always = { weekly: [], days: {}, away: [] };
  const hours = {
    ...always,
    weekly: [{ from: "2026-01-01", hours: Array.from({ length: 7 }, () => [{ opens: 0, closes: 1_440 }]) }],
  };
  const facts = readShop(inAir(toSeal(), coldNights), contextAt("Mon 18:00", { hours }));
  const made = problemToPlan(facts);
  const search = beginSearch(made.problem, { seed: 1, warm: null });
  search.go(300);
  const coats = made.pieces.flatMap(({ tasks }) => tasks.filter(({ coat }) => coat === "varnish"));
  const laid = search.found.plan.visits.filter(({ task }) => coats.some((coat) => coat.task === task));
  expect(laid.length).toBe(3);
  for (const { start, end } of laid) {
    // Minutes from Monday 18:00; fit by the clock from 7:30 to 20:00.
    const clock = (minute: number) => (minute + 18 * 60) % 1_440;
    expect(clock(start)).toBeGreaterThanOrEqual(7 * 60 + 30);
    expect(clock(end - 1)).toBeLessThan(20 * 60);
  }
});

test("what take refuses now is what the plan may not begin now, in any air", () => {
  fc.assert(
    fc.property(anyLine, fc.integer({ min: -4_000, max: 0 }), (line, minute) => {
      const now = at("Mon 18:30");
      const shift = now - minute * MINUTE - 4_320 * MINUTE;
      const moved = {
        ...line,
        since: line.since + shift,
        readings: line.readings.map((reading) => ({ ...reading, at: reading.at + shift })),
      };
      const shop = inAir(toSeal(), moved);
      const facts = readShop(shop, context("Mon 18:30"));
      const { problem } = problemToPlan(facts);
      const isHeld = whatNow(shop, context("Mon 18:30")).held.some(
        ({ because }) => because.code === "unfit air",
      );
      expect(problem.tasks[0]?.unfit?.[0]?.[0] === 0).toBe(isHeld);
    }),
    { numRuns: 50 },
  );
});

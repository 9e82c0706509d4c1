import { expect, test } from "vitest";
import { findStanding } from "../../src/acts/stand-ready.ts";
import type { AirLine } from "../../src/cure/air-line.ts";
import { potLife } from "../../src/cure/pot-life.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { problemToPlan } from "../../src/plan/problem-to-plan.ts";
import { whatNow } from "../../src/plan/what-now.ts";
import { setUpState } from "../../src/shop/set-up-state.ts";
import { hoursOf } from "../../src/shop/settings-at.ts";
import type { Shop } from "../../src/shop/shop.ts";
import { sayDone } from "../../src/words/say-done.ts";
import { sayPrepared } from "../../src/words/say-waiting.ts";
import { Diary } from "../fixtures/diary.ts";
import { everyDay, inAir } from "../fixtures/shop-in-air.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { contextAt } from "../plan/ask-now.ts";
import { speechAt } from "../words/made-rows.ts";

/** 1 to 4 wait for their last clear; a cup of resin, 30 min by its file, was mixed at 19:00 where `mixed`. */
function clearing(mixed: boolean): Diary {
  const diary = new Diary(walker);
  for (const tag of [1, 2, 3, 4]) {
    diary.tag(tag, "last Sat 10:00");
    diary.workUpTo(tag, "last clear", "last Sat 10:00");
  }
  if (mixed)
    diary.ready("bench", "mix resin", "Mon 19:00", { keeps: { way: "mix", minutes: 30, serves: 4 } });
  return diary;
}

const warm = everyDay(() => 30);
const context = (when: string) => contextAt(when, { hours: hoursOf({ hours: null }) });

function standingOf(shop: Shop) {
  const setUp = shop.stations.get("bench")?.setUp;
  if (setUp == null) throw new Error("nothing stands at the bench");
  return setUp;
}

test("a cup that keeps 30 min at 20 °C keeps 13 at 30 °C, and is kept too long from then on", () => {
  // Arrhenius by 60 kJ/mol: 2.2525 times as fast (tests/published/cure-rate.test.ts); 30 / 2.2525 = 13.3.
  const cup = standingOf(inAir(clearing(true).shop(), warm));
  expect(cup).toMatchObject({ keeps: { way: "mix", minutes: 13, serves: 4 }, keptByFile: 30 });
  expect(setUpState(cup, at("Mon 19:12"))).toEqual({ is: "ready", until: at("Mon 19:13") });
  expect(setUpState(cup, at("Mon 19:13")).is).toBe("kept too long");
  const needed = { step: walker.steps[8], what: "mix resin", pieces: 1 } as Parameters<
    typeof findStanding
  >[0];
  expect(needed.step.name).toBe("last clear");
  expect(findStanding(needed, inAir(clearing(true).shop(), warm), at("Mon 19:14"))).toBeNull();
});

test("in the cold it keeps longer, below the coat's lowest temperature too", () => {
  // 20 to 10 °C: exp(60 / 0.0083145 x (1 / 283.15 - 1 / 293.15)) = 2.386 times as long: 71.6 min.
  expect(
    standingOf(
      inAir(
        clearing(true).shop(),
        everyDay(() => 10),
      ),
    ).keeps,
  ).toMatchObject({ minutes: 71 });
});

test("where the air is not known it keeps as its file says", () => {
  expect(standingOf(clearing(true).shop())).not.toHaveProperty("keptByFile");
  const later: AirLine = { ...warm, since: at("Mon 19:05") };
  expect(standingOf(inAir(clearing(true).shop(), later))).toMatchObject({ keeps: { minutes: 30 } });
  expect(standingOf(inAir(clearing(true).shop(), later))).not.toHaveProperty("keptByFile");
});

test("air that turns changes what is left: warmth that comes after 10 min counts from then on", () => {
  const ahead = everyDay(() => 20).ahead;
  const read = (minute: number, celsius: number) => ({
    at: at("Mon 19:00") + minute * 60_000,
    celsius,
    humidityPercent: 50,
  });
  const line = {
    since: at("Mon 19:00"),
    readings: [read(0, 20), read(10, 20), read(11, 30), read(90, 30)],
    ahead,
  };
  // 10 min at 1, one at about 1.6, the rest of 18.4 at 2.2525: 8.2 min; 19 in all.
  expect(standingOf(inAir(clearing(true).shop(), line)).keeps).toMatchObject({ minutes: 19 });
});

test("read in another air a second time, it is reckoned from its file again", () => {
  const shop = inAir(
    inAir(clearing(true).shop(), warm),
    everyDay(() => 20),
  );
  expect(standingOf(shop)).toMatchObject({ keeps: { minutes: 30 }, keptByFile: 30 });
});

test("what now and the plan count by it, and every line says that it is predicted", () => {
  const shop = inAir(clearing(true).shop(), warm);
  const row = whatNow(shop, context("Mon 19:05")).prepared[0];
  expect(row && sayPrepared(row, speechAt("Mon 19:05"))).toBe(
    "bench: mix resin, keeps till 19:13 (predicted; 30 min by its file), 5 min to put away",
  );
  const late = whatNow(shop, context("Mon 19:14"));
  expect(late.prepared).toMatchObject([{ state: "kept too long" }]);
  expect(late.work[0]).toMatchObject({ step: "last clear", setUp: { minutes: 4, standing: false } });
  const keeps = (diary: Diary) =>
    problemToPlan(readShop(inAir(diary.shop(), warm), context("Mon 19:05"))).problem.setUps.map(
      (one) => one.keeps,
    );
  // A cup still to be mixed keeps as long as one mixed in the air of now.
  expect(keeps(clearing(false))).toEqual(keeps(clearing(true)));
  expect(keeps(clearing(true))).toContainEqual({ way: "mix", minutes: 13, serves: 4 });
});

test("mixed, it is said till when it keeps", () => {
  const diary = clearing(true);
  const event = diary.events.at(-1);
  expect(event && sayDone([event], inAir(diary.shop(), warm), speechAt("Mon 19:00"))).toEqual([
    "Mix resin ready 19:00 at the bench. Keeps till 19:13 (predicted; 30 min by its file).",
  ]);
});

test("what dries by the air, and not by itself, keeps in its cup as its file says", () => {
  const water = {
    curesBy: "water",
    sheetAir: { celsius: 20, humidityPercent: 50 },
    activationEnergy: null,
  } as const;
  expect(potLife(water, 30, { celsius: 30, humidityPercent: 20 })).toBe(30);
});

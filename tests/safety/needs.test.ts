import { expect, test } from "vitest";
import { staysAsRead } from "../../src/cure/air-ahead.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";
import { needState } from "../../src/safety/needs.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

const need = { what: "wood moisture", atMost: 10, unit: "%" };
const unknownAir = new ShopAir(new Map());

/** Air that stays at 20 °C and a humidity: 50 % brings wood to 9.27 %, 65 % to 12.0 % (Wood Handbook, Eq. 4-5). */
function airOf(humidityPercent: number): ShopAir {
  const reading = { at: at("Mon 10:00"), celsius: 20, humidityPercent };
  return new ShopAir(
    new Map([["", { since: reading.at, readings: [reading], ahead: staysAsRead(reading) }]]),
  );
}

function drilled(): Diary {
  const diary = new Diary(walker);
  diary.came(1, "drill", "Mon 11:00", "Mon 11:00");
  return diary;
}

function state(diary: Diary, air: ShopAir) {
  const piece = diary.shop().pieces.get(1);
  if (piece === undefined) throw new Error("there is no 1");
  return needState(need, piece, air);
}

const weigh = (diary: Diary, grams: number, when: string) =>
  diary.say(1, { kind: "measured", what: "weight", value: grams, unit: "g" }, when);

test("a meter says", () => {
  const diary = drilled();
  expect(state(diary, unknownAir)).toEqual({ is: "not known", guidance: null });
  diary.say(1, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 12:00");
  expect(state(diary, unknownAir)).toEqual({ is: "met" });
  diary.say(1, { kind: "measured", what: "wood moisture", value: 14, unit: "%" }, "Mon 13:00");
  expect(state(diary, airOf(50))).toEqual({ is: "too high", value: 14 });
});

test("the air alone is guidance, and not counted as known", () => {
  const known = state(drilled(), airOf(50));
  expect(known).toMatchObject({ is: "not known" });
  expect(known.is === "not known" && known.guidance).toBeCloseTo(9.2711, 4);
});

test("two equal weighings a day apart are wood at rest with the air", () => {
  const diary = drilled();
  weigh(diary, 24.0, "Mon 18:00");
  expect(state(diary, airOf(50)).is).toBe("not known");
  weigh(diary, 23.9, "Tue 18:00");
  expect(state(diary, airOf(50))).toEqual({ is: "met" });
  expect(state(diary, unknownAir)).toEqual({ is: "met" });
  // At rest, but in air that keeps wood at 12 %.
  expect(state(diary, airOf(65))).toEqual({ is: "too high", value: 12 });
});

test("weighings that differ, or of one evening, say nothing", () => {
  const diary = drilled();
  weigh(diary, 24.0, "Mon 18:00");
  weigh(diary, 24.0, "Mon 20:30");
  expect(state(diary, airOf(50)).is).toBe("not known");
  weigh(diary, 23.2, "Tue 18:00");
  expect(state(diary, airOf(50)).is).toBe("not known");
});

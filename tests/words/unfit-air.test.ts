import { expect, test } from "vitest";
import { holdsOn } from "../../src/safety/fit-to-start.ts";
import { sayHold } from "../../src/words/say-hold.ts";
import { sayRefusal } from "../../src/words/say-refusal.ts";
import { Diary } from "../fixtures/diary.ts";
import { coldNights, everyDay, inAir } from "../fixtures/shop-in-air.ts";
import { walker, walkerRules } from "../fixtures/walker.ts";
import { moment } from "../fixtures/week-time.ts";
import { speechAt } from "./made-rows.ts";

const metric = speechAt("Mon 20:00");
const us = { ...metric, units: "us" } as const;

/** What holds the sealer of a bare piece, in air of a kind. */
function held(line: typeof coldNights, when: string) {
  const step = walker.steps.find(({ name }) => name === "seal");
  if (step === undefined) throw new Error("no seal");
  const task = { tags: [3], step, part: "step", preparation: null, coats: walker.coats, leaves: [] } as const;
  const [hold] = holdsOn(task, inAir(new Diary(walker).shop(), line), walkerRules, moment(when));
  if (hold === undefined) throw new Error("nothing holds it");
  return hold;
}

test("air that is too cold is told in the maker's units", () => {
  const hold = held(coldNights, "Mon 22:00");
  expect(hold.because).toBe("the air is at 6 °C and varnish wants 10 °C or more");
  expect(sayHold(hold, hold.until, metric)).toBe(
    "till Tue 07:21, the air is at 6 °C and varnish wants 10 °C or more: warm the shop",
  );
  // 6 x 9 / 5 + 32 = 42.8; 10 °C = 50 °F.
  expect(sayHold(hold, hold.until, us)).toBe(
    "till Tue 07:21, the air is at 43 °F and varnish wants 50 °F or more: warm the shop",
  );
});

test("air that will be too cold before the coat is dust-free says when, and that it is expected", () => {
  const hold = held(coldNights, "Mon 20:00");
  expect(hold.because).toBe(
    "the air is expected at 9 °C in 45 min, and varnish wants 10 °C or more till it is dust-free",
  );
  expect(sayHold(hold, null, us)).toBe(
    "the air is expected at 48 °F at 20:45, and varnish wants 50 °F or more till it is dust-free: warm the place it hangs in",
  );
});

test("a margin over the dew point is a difference: 3 °C are 5.4 °F, not 37", () => {
  const hold = held(
    everyDay(() => 20, 90),
    "Mon 18:00",
  );
  // The dew point of 20 °C 90 % is 18.3 °C, 64.9 °F.
  expect(sayHold(hold, null, metric)).toBe(
    "the air is at 20 °C, its dew point at 18.3 °C: a surface wants 3 °C between them: warm the shop or dry its air",
  );
  const refusal = { code: "held", exit: 3, tags: [3], step: "seal", holds: [hold], until: null } as const;
  expect(sayRefusal(refusal, us)).toContain(
    "3 seal is held, as the air is at 68 °F, its dew point at 65 °F: a surface wants 5.4 °F between them",
  );
});

import { expect, test } from "vitest";
import type { ColdAhead } from "../../src/shop/cold-ahead.ts";
import { sayColdAhead } from "../../src/words/say-air.ts";
import { at } from "../fixtures/week-time.ts";
import { speechAt } from "./made-rows.ts";

test("coats that the same cold keeps as long are told in one line", () => {
  const one: ColdAhead = {
    tag: 1,
    coat: "primer",
    lowestCelsius: 10,
    coldest: { at: at("Tue 3:00"), celsius: 7 },
    hard: at("Tue 12:45"),
    better: null,
  };
  const later = { ...one, tag: 4, hard: at("Tue 13:10") };
  expect(sayColdAhead([one, { ...one, tag: 2 }, later], speechAt("Mon 20:00"))).toEqual([
    "1 and 2: falls to 7 °C at Tue 03:00, and primer does not cure below 10 °C: dry-hard Tue 12:45 (predicted)",
    "4: falls to 7 °C at Tue 03:00, and primer does not cure below 10 °C: dry-hard Tue 13:10 (predicted)",
  ]);
});

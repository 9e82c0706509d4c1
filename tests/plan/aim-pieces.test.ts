import { expect, test } from "vitest";
import { aimPieces } from "../../src/plan/aim-pieces.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep } from "../fixtures/walker.ts";
import { contextAt, newPieceOf } from "./ask-now.ts";

const DAY = 24 * 60;

/** Cut 30, coat 6 (dry-hard after 12 h), hangers 10: begun Monday 18:00 it is finished Tuesday 18:10. */
const plain = makeProcess(
  "plain",
  inARow([
    makeStep("cut", 30),
    makeStep("coat", 6, { coat: "slow" }),
    makeStep("hangers", 10, { waitsFor: "dry-hard" }),
  ]),
  [makeCoat("slow", { stages: { "dry-hard": 720 } })],
);

/** Pieces tagged on Monday 17:00 under an aim, and what it asks for of the coming week. */
function asked(count: number, aim: { out?: number; finishedPerWeek?: number } | null, days = 7) {
  const diary = new Diary(plain);
  for (let tag = 1; tag <= count; tag++) diary.tag(tag, "Mon 17:00");
  if (aim !== null) {
    const { out = null, finishedPerWeek = null } = aim;
    diary.settle({ of: "aim", from: "2026-03-23", out, finishedPerWeek }, "Mon 17:00");
  }
  const facts = readShop(diary.shop(), contextAt("Mon 17:00", { newPiece: newPieceOf(plain) }));
  const aimed = aimPieces(facts, days * DAY);
  return { out: aimed.facts.aim?.out ?? null, releases: aimed.added.map(({ release }) => release) };
}

test("without an aim nothing is asked for", () => {
  expect(asked(1, null)).toEqual({ out: null, releases: [] });
});

test("what is missing now may be begun now, and one for each that is finished once it is", () => {
  // 25 h 10 from Monday 17:00 to Tuesday 18:10.
  expect(asked(1, { out: 3 })).toEqual({ out: 3, releases: [0, 0, 25 * 60 + 10] });
});

test("one that is finished after the days asked about makes no room in them", () => {
  expect(asked(1, { out: 3 }, 1)).toEqual({ out: 3, releases: [0, 0] });
});

test("with more on their way than is asked for, the first to be finished makes none", () => {
  // Two pieces: Tuesday 18:10 and 18:20.
  expect(asked(2, { out: 1 })).toEqual({ out: 1, releases: [25 * 60 + 20] });
});

test("an aim for a week is as many on their way as Little's law asks for", () => {
  // Alone from Monday 17:00 it takes 25 h 10 = 1,510 min: 10 a week x 1,510 / 10,080 = 1.5, so 2 on their way.
  expect(asked(1, { finishedPerWeek: 10 }).out).toBe(2);
  expect(asked(0, { finishedPerWeek: 10 }).releases).toEqual([0, 0]);
});

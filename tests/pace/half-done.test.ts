import { expect, test } from "vitest";
import { weekReview } from "../../src/pace/week.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const handsOn = (diary: Diary) =>
  weekReview({ shop: diary.shop(), rows: [], date: "2026-03-29", zone: dublin, now: at("Sun 20:05") })
    .handsOn;

test("what was put down half-done is told apart until it ends, and then counts", () => {
  const diary = new Diary(walker);
  diary.tag(7, "Mon 18:00");
  diary.take(7, "shape", "Mon 18:00");
  diary.leave(7, "shape", "Mon 18:34");
  expect(handsOn(diary)).toMatchObject({ minutes: 0, halfDone: { count: 1, tags: [7], minutes: 34 } });
  diary.take(7, "shape", "Mon 18:50");
  diary.hang(7, "shape", "Mon 18:56");
  expect(handsOn(diary)).toMatchObject({ minutes: 40, halfDone: { count: 0, minutes: 0 } });
});

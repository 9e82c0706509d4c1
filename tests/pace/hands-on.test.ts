import { describe, expect, test } from "vitest";
import { weekReview } from "../../src/pace/week.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const review = (diary: Diary) =>
  weekReview({ shop: diary.shop(), rows: [], date: "2026-03-29", zone: dublin, now: at("Sun 20:05") });

test("what was put down half-done is told apart until it ends, and then counts", () => {
  const diary = new Diary(walker);
  diary.tag(7, "Mon 18:00");
  diary.take(7, "shape", "Mon 18:00");
  diary.leave(7, "shape", "Mon 18:34");
  expect(review(diary).handsOn).toMatchObject({ minutes: 0, halfDone: { count: 1, tags: [7], minutes: 34 } });
  diary.take(7, "shape", "Mon 18:50");
  diary.hang(7, "shape", "Mon 18:56");
  expect(review(diary).handsOn).toMatchObject({ minutes: 40, halfDone: { count: 0, minutes: 0 } });
});

describe("hands-on nobody timed", () => {
  test("is told apart and not in the sum", () => {
    const diary = new Diary(walker);
    diary.tag(7, "Mon 18:00");
    diary.hang(7, "shape", "Mon 19:00");
    diary.take(7, "drill", "Mon 19:00");
    diary.hang(7, "drill", "Mon 19:09");
    const { handsOn, steps } = review(diary);
    expect(handsOn).toMatchObject({ minutes: 9, unknown: { count: 1, tags: [7] } });
    expect(steps.map(({ step }) => step)).toEqual(["drill"]);
  });

  test("hung or put down a day after it was taken counts no night as work: nobody knows how long it took", () => {
    const diary = new Diary(walker);
    diary.tag(8, "Wed 18:00");
    diary.tag(9, "Wed 18:00");
    // Shaping takes 40 min: more than four times that was no work. 9 lay a day and took 10 min after.
    diary.take(8, "shape", "Wed 20:30");
    diary.hang(8, "shape", "Thu 18:05");
    diary.take(9, "shape", "Thu 18:10");
    diary.leave(9, "shape", "Fri 18:00");
    const { handsOn, steps } = review(diary);
    expect(handsOn).toMatchObject({
      minutes: 0,
      unknown: { count: 1, tags: [8] },
      halfDone: { count: 1, minutes: 0 },
    });
    expect(steps).toEqual([]);
  });
});

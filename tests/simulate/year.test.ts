import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import type { Problem } from "../../src/plan/problem.ts";
import { findCeiling } from "../../src/simulate/ceiling.ts";
import { noiseFrom, noNoise } from "../../src/simulate/work-noise.ts";
import { playPieces, playStream } from "../../src/simulate/year.ts";
import { smallProblem, waitFor } from "../plan/small-problem.ts";
import { asPlan, policies } from "./played.ts";

const DAY = 1440;
const WEEK = 7 * DAY;

/** Evenings of three hours for so many days. */
function evenings(days: number): Pick<Problem, "sessions"> {
  return {
    sessions: Array.from({ length: days }, (_, day) => ({ opens: day * DAY, closes: day * DAY + 180 })),
  };
}

/** 10 min; 60 min later, within 2 h or after 5 min of scuffing a day later, 20 min; over night, 5 min. */
const coat = waitFor(0, [
  [60, 120],
  [DAY, null, 5],
]);
const shop: Problem = smallProblem(
  [{}, { minutes: 20, waits: [coat] }, { minutes: 5, waits: [waitFor(1, [[200, null]])] }],
  [{ underLimit: true }],
  evenings(9 * 7),
);

describe("one piece out, all as thought", () => {
  // 0 to 10, 70 to 90, then opens at 290, when the bench is shut: 1440 to 1445. The next from 1445 on: 1455, 1515 to
  // 1535, opens at 1735: 2880 to 2885. So each takes a day but five minutes after the one before, out 1445, then 1440.
  const stream = { shop, out: 1, ahead: 1 };

  test.each(Object.entries(policies))("%s takes the time worked out by hand", (_, policy) => {
    const { pieces } = playPieces(stream, policy(), noNoise, 4 * DAY);
    const spans = pieces.flatMap(({ began, finish }) =>
      began === null || finish === null ? [] : [[began, finish]],
    );
    expect(spans).toEqual([
      [0, 1445],
      [1445, 2885],
      [2885, 4325],
    ]);
  });

  test("figures are as worked out by hand", () => {
    const figures = playStream(stream, policies["oldest first"]?.() ?? fail(), noNoise, {
      from: DAY,
      until: DAY + WEEK,
    });
    // Seven finished in seven days (1445, 2885, ... 10085); each is 1440 min out, the first 1445.
    expect(figures.finished).toBe(7);
    expect(figures.finishedPerWeek).toBe(7);
    expect(figures.daysOut).toBeCloseTo((6 * 1440 + 1445) / 7 / 1440, 9);
    expect(figures.missed).toBe(0);
    // One out for 10080 minutes, seven finished, nothing amended or set up.
    expect(figures.score).toBe(1440);
    // 35 of 180 minutes each day.
    expect(figures.busy).toBeCloseTo(35 / 180, 9);
  });
});

test("the ceiling is hours open over hands-on, and what one out alone gives times the number out", () => {
  // 7 x 180 min open and 35 min a piece: 36. Alone a piece is finished each day: with two out 14 a week.
  const { byHours, byTimeOut } = findCeiling(shop, 2, [noNoise], { from: DAY, until: DAY + 4 * WEEK });
  expect(byHours).toBeCloseTo(36, 9);
  expect(byTimeOut).toBeCloseTo(14, 9);
});

describe.each(Object.entries(policies))("a stream under %s", (name, policy) => {
  test.each([1, 2, 3, 6])("with %i out loses no piece and passes no ceiling", (out) => {
    const span = { from: WEEK, until: 5 * WEEK };
    const state = playPieces({ shop, out, ahead: 2 }, policy(), noNoise, span.until);
    const finished = state.pieces.filter(({ finish }) => finish !== null);
    expect(state.unfinished.length + finished.length).toBe(state.pieces.length);
    for (const piece of finished) {
      expect(piece.tasks.every(({ end }) => end !== null && end <= (piece.finish ?? 0))).toBe(true);
    }
    const { problem, plan } = asPlan(state);
    expect(checkPlan(problem, plan)).toEqual([]);
    const { byHours, byTimeOut } = findCeiling(shop, out, [noNoise], span);
    const figures = playStream({ shop, out, ahead: 2 }, policy(), noNoise, span);
    // A piece more may fall within the span by where its borders lie.
    expect(figures.finished).toBeLessThanOrEqual(4 * Math.min(byHours, byTimeOut) + 1);
    expect(figures.finished, name).toBeGreaterThan(0);
  });

  test("gives the same year for the same seed", () => {
    const figures = [1, 2].map(() =>
      playStream({ shop, out: 3, ahead: 2 }, policy(), noiseFrom(3, { hands: 0.25, wait: 0.15 }), {
        from: WEEK,
        until: 3 * WEEK,
      }),
    );
    expect(figures[0]).toEqual(figures[1]);
  });
});

function fail(): never {
  throw new Error("no such policy");
}

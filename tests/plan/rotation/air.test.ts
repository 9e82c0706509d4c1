import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { benchRound, repeatRound } from "../../../src/plan/rotation/bench-round.ts";
import { circleOfProblem } from "../../../src/plan/rotation/circle-of-problem.ts";
import { PacePatterns } from "../../../src/plan/rotation/pace-patterns.ts";
import { rotationOf } from "../../../src/plan/rotation/rotation-of.ts";
import { rotationProblem } from "../../../src/plan/rotation/rotation-problem.ts";
import { solveAlone } from "../../../src/plan/rotation/solve-alone.ts";
import { typicalFacts } from "../../../src/plan/rotation/typical-day.ts";
import { unfitHours } from "../../../src/plan/rotation/unfit-hours.ts";
import { asIfInAir } from "../../../src/shop/hang-in-air.ts";
import type { Shop } from "../../../src/shop/shop.ts";
import { readWeeklyHours } from "../../../src/time/read-hours.ts";
import { Diary } from "../../fixtures/diary.ts";
import { coldNights, everyDay, inAir } from "../../fixtures/shop-in-air.ts";
import { walker } from "../../fixtures/walker.ts";
import { at } from "../../fixtures/week-time.ts";
import { contextAt } from "../ask-now.ts";
import { checkCircle } from "./check-circle.ts";
import { unroll } from "./unroll.ts";

const context = contextAt("Mon 18:00");
const empty = new Diary(walker).shop();

function weeklyOf(hours: string) {
  const read = readWeeklyHours(hours);
  const round = "weekly" in read ? benchRound(read.weekly) : null;
  if (!("weekly" in read) || round === null) throw new Error("no hours");
  return { weekly: read.weekly, round };
}

function answerIn(shop: Shop, hours: string) {
  const { weekly } = weeklyOf(hours);
  const ask = { definition: walker, weekly, pace: { pieces: 1, days: 7 }, out: null };
  let looks = 0;
  return rotationOf(shop, context, { ...ask, isOver: () => looks++ > 3_000 });
}

/** One piece in so many rounds of the bench, solved. */
function solveIn(shop: Shop, hours: string, rounds: number) {
  const { round } = weeklyOf(hours);
  const facts = typicalFacts(shop, context, round.begins);
  const problemOf = (pieces: number) => rotationProblem(facts, walker, pieces).problem;
  const built = circleOfProblem(problemOf(1), round.minutes * rounds, repeatRound(round, rounds));
  const answer = solveAlone(built.circle, (nodes) => nodes > 5_000);
  return { problemOf, built, answer, begins: round.begins };
}

describe("a shop that is too cold for varnish at night (10 degrees from 7:20 to 20:40)", () => {
  const cold = inAir(empty, coldNights);

  test("lays it in a rotation only from 7:21 to 20:00, while it will be dust-free before the cold", () => {
    const { built, answer, begins, problemOf } = solveIn(cold, "daily 6-23", 3);
    expect(answer.starts).not.toBeNull();
    const coats = built.work.flatMap(({ task, part }, index) =>
      part === "step" && (problemOf(1).tasks[task]?.unfit?.length ?? 0) > 0 ? [index] : [],
    );
    expect(coats.length).toBeGreaterThan(1);
    for (const index of coats) {
      const clock = ((answer.starts?.[index] ?? 0) + begins) % 1_440;
      expect(clock).toBeGreaterThanOrEqual(7 * 60 + 21);
      // Fit till 20:00, as the plan of the same night has it.
      expect(clock + (built.circle.tasks[index]?.minutes ?? 0)).toBeLessThanOrEqual(20 * 60);
    }
    expect(checkCircle(built.circle, { starts: answer.starts ?? [], made: answer.made })).toEqual([]);
  });

  test("is played out without a word from the checker of plans, which knows the air of each day", () => {
    const PERIODS = 4;
    const { built, answer, problemOf } = solveIn(cold, "daily 6-23", 3);
    const { problem, plan } = unroll(problemOf(PERIODS), built, answer, PERIODS);
    expect(checkPlan(problem, plan)).toEqual([]);
  });

  test("finds no pattern of several pieces that lays it in the cold", () => {
    const { built } = solveIn(cold, "weekdays 6-9 18-23", 1);
    const { circle } = built;
    const patterns = new PacePatterns(
      circle,
      solveAlone(circle, (nodes) => nodes > 5_000),
    );
    const found = patterns.solve(2, { first: 60, fewer: 10, shorten: 10 }, () => false);
    expect(found.starts).not.toBeNull();
    const two = [0, 1].flatMap((piece) => {
      const own = found.starts?.slice(piece * circle.tasks.length, (piece + 1) * circle.tasks.length) ?? [];
      return circle.tasks.map(({ minutes, unfit = [] }, task) => ({ minutes, unfit, start: own[task] ?? 0 }));
    });
    const within = two.filter(({ minutes, unfit, start }) => {
      const from = ((start % circle.period) + circle.period) % circle.period;
      return unfit.some(([begins, ends]) => begins < from + minutes && ends > from);
    });
    expect(within).toEqual([]);
  });

  test("tells the hours in which its coats are not laid, as far as the bench is open then", () => {
    const unfitIn = (hours: string) => {
      const { round } = weeklyOf(hours);
      const facts = typicalFacts(cold, context, round.begins);
      return unfitHours(rotationProblem(facts, walker, 1), round);
    };
    expect(unfitIn("daily 6-23")[0]).toEqual({ step: "seal", from: 20 * 60, until: 7 * 60 + 21 });
    expect(unfitIn("daily 9-17")).toEqual([]);
  });

  test("is refused where the bench is open in the cold alone, with what makes it unfit", () => {
    expect(answerIn(cold, "daily 21-24")).toMatchObject({
      because: "air",
      step: "seal",
      coat: "varnish",
      air: { is: "too cold", lowestCelsius: 10 },
    });
  });
});

describe("air that is the same all day", () => {
  test("of 5 degrees is refused for a coat that wants 10, whatever the hours", () => {
    const shop = asIfInAir(empty, { celsius: 5, humidityPercent: 40 }, at("Mon 18:00"));
    expect(answerIn(shop, "daily 9-17")).toMatchObject({ because: "air", remedy: "warm the shop" });
  });

  test("of 22 degrees dries sooner than of 14, and so a piece takes less", () => {
    const spanAt = (celsius: number): number => {
      const shop = inAir(
        empty,
        everyDay(() => celsius),
      );
      return solveIn(shop, "daily 9-17", 3).answer.span ?? Number.NaN;
    };
    expect(spanAt(22)).toBeLessThan(spanAt(14));
  });

  test("where a coat never dries is refused: water-based paint at 100 % of humidity is at its dew point", () => {
    const shop = asIfInAir(empty, { celsius: 20, humidityPercent: 100 }, at("Mon 18:00"));
    expect(answerIn(shop, "daily 9-17")).toMatchObject({ because: "air", air: { is: "dew" } });
  });
});

import { describe, expect, test } from "vitest";
import { readShop } from "../../../src/plan/plan-shop.ts";
import { benchRound, repeatRound } from "../../../src/plan/rotation/bench-round.ts";
import type { Circle } from "../../../src/plan/rotation/circle.ts";
import { circleOfProblem } from "../../../src/plan/rotation/circle-of-problem.ts";
import { PacePatterns } from "../../../src/plan/rotation/pace-patterns.ts";
import { rotationProblem } from "../../../src/plan/rotation/rotation-problem.ts";
import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { readWeeklyHours } from "../../../src/time/read-hours.ts";
import { Diary } from "../../fixtures/diary.ts";
import { keepApart, processes } from "../../process/shipped-files.ts";
import { contextAt } from "../ask-now.ts";
import { checkCircle, countOut } from "./check-circle.ts";
import { randomCircle } from "./random-circle.ts";

const EVENINGS = "weekdays 18-21, Sat 9-16";
const ROUNDS = { first: 40, fewer: 10, shorten: 10 };

/** The circles of so many pieces of a process each round of the bench. */
function circlesOf(
  name: string,
  hours: string,
  { hooks = null, hands = 1, rounds = 1 }: { hooks?: number | null; hands?: number; rounds?: number },
): (pieces: number) => Circle {
  const definition = processes.find((one) => one.name === name);
  if (definition === undefined) throw new Error(`no process ${name}`);
  const shop = new Diary(definition).shop();
  const facts = readShop(shop, contextAt("Mon 18:00", { rules: { keepApart, cautions: {} } }));
  const places: typeof facts.places = hooks === null ? new Map() : new Map([["rack", { hooks }]]);
  const read = readWeeklyHours(hours);
  const round = "weekly" in read ? benchRound(read.weekly) : null;
  if (round === null) throw new Error("no hours");
  return (pieces) => {
    const { problem } = rotationProblem({ ...facts, places, hands }, definition, pieces);
    return circleOfProblem(problem, rounds * round.minutes, repeatRound(round, rounds)).circle;
  };
}

/** Patterns of 2, 3 ... pieces, each begun from the one before. */
function patternsOf(circleOf: (pieces: number) => Circle, most: number) {
  const patterns = new PacePatterns(
    circleOf(1),
    solveCircle(circleOf(1), { stop: (nodes) => nodes > 2_000 }),
  );
  return Array.from({ length: most - 1 }, (_, index) => {
    const pieces = index + 2;
    const answer = patterns.solve(pieces, ROUNDS, () => false);
    return { pieces, circle: circleOf(pieces), answer, fewest: patterns.fewestOut(pieces) };
  });
}

describe("patterns of several pieces a week, each read by a checker of its own", () => {
  test.each([
    { name: "carved walker", hours: EVENINGS, most: 4 },
    { name: "carved walker", hours: "weekdays 9-17", most: 5 },
    { name: "carved walker", hours: EVENINGS, most: 3, hooks: 3 },
    { name: "carved walker", hours: EVENINGS, most: 4, hands: 2 },
    { name: "carved walker", hours: "daily 9-17", most: 3, rounds: 3 },
    { name: "cast foam minnow", hours: EVENINGS, most: 6 },
    { name: "cast foam minnow", hours: "weekdays 22-2", most: 3 },
    { name: "turned popper", hours: EVENINGS, most: 3 },
    { name: "repainted veteran", hours: EVENINGS, most: 6 },
    { name: "repainted veteran", hours: "weekdays 9-17", most: 4, hooks: 4 },
  ])("$most $name in $hours, hooks $hooks, hands $hands", ({ name, hours, most, ...shop }) => {
    const found = patternsOf(circlesOf(name, hours, shop), most).filter(
      ({ answer }) => answer.starts !== null,
    );
    expect(found.length).toBeGreaterThan(0);
    for (const { pieces, circle, answer, fewest } of found) {
      const { starts, made, span, bound } = answer;
      expect({ pieces, wrong: checkCircle(circle, { starts: starts ?? [], made }) }).toEqual({
        pieces,
        wrong: [],
      });
      expect(bound).toBeLessThanOrEqual(span ?? 0);
      expect(fewest).toBeLessThanOrEqual(countOut(circle, starts ?? []));
    }
  });

  test("five carved walkers a week of evenings are found, with ten out at the most", () => {
    const five = patternsOf(circlesOf("carved walker", EVENINGS, {}), 5).at(-1);
    if (five === undefined) throw new Error("no pattern");
    expect(countOut(five.circle, five.answer.starts ?? [])).toBeLessThanOrEqual(10);
    // 5 pieces of 4 days each are 20 days: in a week of 7 never fewer than 3 out.
    expect(Math.ceil(five.answer.bound / five.circle.period)).toBe(3);
  });

  test("the same search finds the same pattern", () => {
    const circleOf = circlesOf("cast foam minnow", EVENINGS, {});
    expect(patternsOf(circleOf, 3)).toEqual(patternsOf(circleOf, 3));
  });
});

describe("small circles drawn from a seed", () => {
  const solved = Array.from({ length: 60 }, (_, seed) => {
    const circle = randomCircle(seed);
    const one = solveCircle(circle, { stop: () => false });
    const patterns = new PacePatterns(circle, { ...one, starts: null });
    const found = patterns.solve(1, { first: 20, fewer: 0, shorten: 20 }, () => false);
    return { circle, one, found };
  });

  test("a pattern found holds, and takes no less than the rotation proven", () => {
    for (const { circle, one, found } of solved) {
      if (found.starts === null) continue;
      expect(checkCircle(circle, { starts: found.starts, made: found.made })).toEqual([]);
      expect(found.span).toBeGreaterThanOrEqual(one.span ?? Number.POSITIVE_INFINITY);
    }
  });

  test("for most that have a rotation a pattern is found, and mostly as short a one", () => {
    const can = solved.filter(({ one }) => one.span !== null);
    const found = can.filter(({ found }) => found.span !== null);
    const best = can.filter(({ one, found }) => found.span === one.span);
    expect(found.length / can.length).toBeGreaterThan(0.5);
    expect(best.length / can.length).toBeGreaterThan(0.4);
  });

  test("the checker says what is wrong where one task is moved", () => {
    const moved = solved.flatMap(({ circle, one }) => {
      if (one.starts === null) return [];
      expect(checkCircle(circle, { starts: one.starts, made: one.made })).toEqual([]);
      const starts = one.starts.map((start, task) => (task === 0 ? start + 1 : start));
      return [checkCircle(circle, { starts, made: one.made }).length];
    });
    expect(moved.filter((count) => count > 0).length).toBeGreaterThan(moved.length / 3);
  });
});

import { describe, expect, test } from "vitest";
import type { Circle } from "../../../src/plan/rotation/circle.ts";
import { leastOutOf, quickestSuccession } from "../../../src/plan/rotation/pattern/least-out.ts";
import { leastSpansOf } from "../../../src/plan/rotation/pattern/least-spans.ts";
import { routeOf } from "../../../src/plan/rotation/pattern/route.ts";
import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { countOut } from "./check-circle.ts";
import { inUnfitAir, randomCircle } from "./random-circle.ts";

/** Open from 0:00 to 8:00: a coat of ten minutes, and ten minutes of sanding 700 minutes after its start or later. */
const overnight: Circle = {
  period: 1_440,
  sessions: [{ opens: 0, closes: 480 }],
  hands: 1,
  tasks: [
    { minutes: 10, stays: 10, setUp: null, fixed: null },
    { minutes: 10, stays: 10, setUp: null, fixed: null },
  ],
  lags: [{ from: 0, to: 1, least: 700, most: null }],
  apart: [
    [10, 10],
    [10, 10],
  ],
  apartFromSetUp: [
    [10, 10],
    [10, 10],
  ],
  setUps: [],
  holds: [],
  room: [],
  pieces: [{ begins: [0], ends: [{ task: 1, minutes: 10 }] }],
};

describe("the fewest pieces out", () => {
  test("are as many as rows of one piece after the other: a night each, so one a day in a row", () => {
    const route = routeOf(overnight);
    // Begun at 7:50 (470) it is sanded from 24:00 (1440) to 1450: 980 minutes, and the next is begun on that day.
    expect(leastSpansOf(route, 1)).toBe(980);
    const row = quickestSuccession(route);
    if (row === null) throw new Error("no way through");
    expect(row.minutes / row.pieces).toBe(1_440);
    // Four a day: 4 x 980 / 1440 = 2.7 would let three out do, but four rows are needed.
    expect(Math.ceil(leastSpansOf(route, 4) / 1_440)).toBe(3);
    expect([1, 2, 4].map((pieces) => leastOutOf(row, pieces, 1_440))).toEqual([1, 2, 4]);
  });

  test("are never more than the proven rotation of a random circle has out", () => {
    let looked = 0;
    for (let seed = 0; seed < 60; seed++) {
      const circle = seed % 2 === 0 ? randomCircle(seed) : inUnfitAir(randomCircle(seed), seed);
      const { starts } = solveCircle(circle, { stop: () => false });
      if (starts === null) continue;
      const row = quickestSuccession(routeOf(circle));
      if (row === null) throw new Error("a way through was solved and not seen");
      expect(leastOutOf(row, 1, circle.period)).toBeLessThanOrEqual(countOut(circle, starts));
      looked++;
    }
    expect(looked).toBeGreaterThan(20);
  });
});

import { describe, expect, test } from "vitest";
import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { hoist } from "../../bench/plan/hoist.ts";
import { readHoist } from "../../bench/plan/read-hoist.ts";
import { checkHoist, phillipsUnger, piecesInProgress } from "./hoist-line.ts";

const ask = { ms: 60_000, rounds: null, seed: 1 };
const text = JSON.stringify(phillipsUnger);

describe("the twelve-tank line of Phillips and Unger, 1976", () => {
  test("has the least period of 521, proven, as is usually quoted for it", () => {
    const { status, objective, bound, starts } = hoist.solve(text, { ...ask, period: null });
    expect({ status, objective, bound }).toEqual({ status: "optimal", objective: 521, bound: 521 });
    expect(checkHoist(phillipsUnger, 521, starts as number[])).toEqual([]);
  });

  test("cannot be run at 520, proven", () => {
    expect(hoist.solve(text, { ...ask, period: 520 })).toMatchObject({ status: "infeasible", starts: null });
  });

  // The fewest pieces in progress as an independent exact program found them.
  test.each([
    { period: 521, fewest: 4 },
    { period: 600, fewest: 3 },
    { period: 1000, fewest: 2 },
  ])("at $period has $fewest pieces in progress at the fewest, proven", ({ period, fewest }) => {
    const { status, objective, starts } = hoist.solve(text, { ...ask, period });
    expect({ status, objective }).toEqual({ status: "optimal", objective: fewest });
    expect(checkHoist(phillipsUnger, period, starts as number[])).toEqual([]);
    expect(piecesInProgress(phillipsUnger, period, starts as number[])).toBe(fewest);
  });

  test("the check lets the schedule pass that is told with the benchmark, and none a minute off", () => {
    const told = [0, 195, 324, 485, 76, 131, 272, 354, 450, 378, 43, 168, 220];
    expect(checkHoist(phillipsUnger, 521, told)).toEqual([]);
    expect(piecesInProgress(phillipsUnger, 521, told)).toBe(4);
    expect(checkHoist(phillipsUnger, 520, told)).not.toEqual([]);
    // Tank 5 holds a piece from 76 + 25 = 101 on, for 30 to 40: until 131 it is 30.
    expect(checkHoist(phillipsUnger, 521, told.with(5, 130))).toContain("tank 5 holds a piece 550");
  });

  test("every single period under 521 is shut out also by itself, not only in ranges", () => {
    for (const period of [363, 400, 450, 500, 519]) {
      const { status } = solveCircle(readHoist(phillipsUnger, period), { stop: () => false });
      expect({ period, status }).toEqual({ period, status: "infeasible" });
    }
  });
});

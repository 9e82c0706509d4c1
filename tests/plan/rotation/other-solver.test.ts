import { beforeAll, describe, expect, test } from "vitest";
import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { readRotation } from "../../bench/plan/read-rotation.ts";
import { checkRotation, spanOfRotation } from "./check-rotation.ts";
import { generalSolver } from "./general-solver.ts";
import { randomRotation } from "./random-rotation.ts";
import { rotationAsMip } from "./rotation-by-mip.ts";

/** The least of a program; null: it is proven to have no solution. */
let least: (program: string) => number | null;

beforeAll(async () => {
  least = await generalSolver();
});

describe("forty random rotations, each also solved as a mixed-integer program by HiGHS", () => {
  const cases = Array.from({ length: 40 }, (_, seed) => {
    const days = seed % 4 === 3 ? 2 : 1;
    const file = randomRotation(seed);
    const period = days * file.day;
    return { seed, days, file, period, ...solveCircle(readRotation(file, period), { stop: () => false }) };
  });

  test.each(cases)("seed $seed, $days days a period: the same least span", (solved) => {
    const { file, period, status, span, bound, starts } = solved;
    expect(span).toBe(least(rotationAsMip(file, period)));
    expect(status).toBe(span === null ? "infeasible" : "optimal");
    if (starts === null) return;
    expect(bound).toBe(span);
    expect(checkRotation(file, period, starts)).toEqual([]);
    expect(spanOfRotation(file, starts)).toBe(span);
  });

  test("hold enough that can be and enough that cannot", () => {
    expect(cases.filter(({ span }) => span !== null).length).toBeGreaterThan(20);
    expect(cases.filter(({ span }) => span === null).length).toBeGreaterThan(3);
  });
});

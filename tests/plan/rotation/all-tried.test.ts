import { describe, expect, test } from "vitest";
import { type CircleAnswer, solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { checkCircle } from "./check-circle.ts";
import { inUnfitAir, randomCircle } from "./random-circle.ts";
import { tryAll } from "./try-all.ts";

const cases = Array.from({ length: 40 }, (_, seed) => seed);
const answers = cases.map((seed) => solveCircle(randomCircle(seed), { stop: () => false }));

describe("random circles of few minutes, each also solved by trying every rotation", () => {
  test.each(cases)("seed %i: the same least span", (seed) => {
    const { status, span } = answers[seed] as CircleAnswer;
    expect(span).toBe(tryAll(randomCircle(seed)));
    expect(status).toBe(span === null ? "infeasible" : "optimal");
  });

  test.each(cases.slice(0, 25))("seed %i in air unfit at times: the same least span", (seed) => {
    const circle = inUnfitAir(randomCircle(seed), seed);
    const { status, span, starts, made } = solveCircle(circle, { stop: () => false });
    expect(span).toBe(tryAll(circle));
    expect(status).toBe(span === null ? "infeasible" : "optimal");
    if (starts !== null) expect(checkCircle(circle, { starts, made })).toEqual([]);
  });

  test("hold enough that can be, with each way a set-up keeps, and enough that cannot", () => {
    const solved = answers.map((answer, seed) => ({ circle: randomCircle(seed), ...answer }));
    const can = solved.filter(({ span }) => span !== null);
    expect(can.length).toBeGreaterThan(20);
    expect(solved.length - can.length).toBeGreaterThan(5);
    for (const way of ["heat", "mix", "load"]) {
      const kept = can.filter(({ circle, made }) =>
        circle.tasks.some(
          ({ setUp }, task) => setUp !== null && !made[task] && circle.setUps[setUp]?.keeps.way === way,
        ),
      );
      expect({ way, kept: kept.length > 0 }).toEqual({ way, kept: true });
    }
  });
});

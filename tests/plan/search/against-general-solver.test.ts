import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { generalSolver } from "../rotation/general-solver.ts";
import { smallProblem, waitFor } from "../small-problem.ts";
import { programOf } from "./shop-by-mip.ts";

/** Bench hours in which much has to wait for the next session, of three. */
const sessions = [0, 40, 80].map((opens) => ({ opens, closes: opens + 20 }));

const step = fc.record({
  minutes: fc.integer({ min: 2, max: 9 }),
  opens: fc.nat(30),
  stays: fc.integer({ min: 2, max: 25 }),
  unfit: fc.option(fc.tuple(fc.nat(95), fc.integer({ min: 1, max: 12 })), { nil: null }),
});

const spans = (unfit: [number, number] | null) =>
  unfit === null ? [] : [[unfit[0], unfit[0] + unfit[1]] as const];

/** Two or three pieces of two steps, with a window between them: hard, or soft with 3 minutes of preparation after it. */
const tinyShop: fc.Arbitrary<Problem> = fc
  .record({
    soft: fc.boolean(),
    pieces: fc.array(
      fc.record({
        first: step,
        second: step,
        release: fc.constantFrom(0, 0, 12),
        due: fc.option(fc.integer({ min: 10, max: 90 }), { nil: null }),
        weight: fc.constantFrom(1, 2),
        cure: fc.constantFrom(0, 15),
      }),
      { minLength: 2, maxLength: 3 },
    ),
  })
  .map(({ soft, pieces }) => {
    const tasks = pieces.flatMap(({ first, second }, piece) => {
      const { opens, stays } = second;
      const shuts = opens + stays;
      const windows: [number, number | null, number?][] = soft
        ? [
            [opens, shuts],
            [shuts + 1, null, 3],
          ]
        : [[opens, shuts]];
      return [
        { piece, minutes: first.minutes, unfit: spans(first.unfit) },
        {
          piece,
          minutes: second.minutes,
          waits: [waitFor(2 * piece, windows)],
          unfit: spans(second.unfit),
        },
      ];
    });
    return smallProblem(tasks, pieces, { sessions, horizon: 1000 });
  });

describe("tiny shops, solved by a general solver of mixed-integer programs", () => {
  test("cost the same by search, windows hard and soft", { timeout: 60_000 }, async () => {
    const solve = await generalSolver();
    let solved = 0;
    for (const problem of fc.sample(tinyShop, 40)) {
      const least = solve(programOf(problem));
      if (least === null) continue;
      solved++;
      const search = beginSearch(problem, { seed: 1, warm: null });
      search.go(600);
      const { plan, score, bound } = search.found;
      expect(checkPlan(problem, plan)).toEqual([]);
      // The program counts completions, the score flow: from release on.
      const released = problem.pieces.reduce((sum, { release }) => sum + release, 0);
      expect(score.total).toBe(least - released);
      expect(bound).toBeLessThanOrEqual(score.total);
    }
    expect(solved).toBeGreaterThan(20);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { boundByPieces } from "../../../src/plan/exact/bound-by-pieces.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import { scorePlan } from "../../../src/plan/score.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { randomProblem } from "../random-problem.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

describe("the bound by each piece alone", () => {
  test("is never more than what a plan costs, whatever the shop", () => {
    fc.assert(
      fc.property(randomProblem, (problem) => {
        const bound = boundByPieces(problem);
        expect(bound).toBeLessThanOrEqual(scorePlan(problem, dispatch(prepareDispatch(problem))).total);
        const search = beginSearch(problem, { seed: 1, warm: null });
        search.go(20);
        expect(bound).toBeLessThanOrEqual(search.found.score.total);
      }),
      { numRuns: 40 },
    );
  });

  test("knows the night between two steps: 50 min of hands-on and 20 min of waiting do not fit an evening of 60", () => {
    const resting = (on: number) => ({ minutes: 25, waits: [waitFor(on, [[20, null]])] });
    const problem = smallProblem(
      [
        { piece: 0, minutes: 25 },
        { piece: 0, ...resting(0) },
        { piece: 1, minutes: 25 },
        { piece: 1, ...resting(2) },
      ],
      [0, 1].map(() => ({ due: 1400, cure: 5 })),
      {
        horizon: 3000,
        sessions: [
          { opens: 0, closes: 60 },
          { opens: 1440, closes: 1500 },
        ],
        prices: { late: 10, flow: 1, amends: 5, setUp: 1 },
      },
    );
    // Each alone: 25, wait 20, then 1440 to 1465 and 5 of cure: 1470, 70 late. Twice 1470 + 10 x 70.
    expect(boundByPieces(problem)).toBe(2 * (1470 + 700));
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { boundByPieces } from "../../../src/plan/exact/bound-by-pieces.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import { scorePlan } from "../../../src/plan/score.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { randomProblem } from "../random-problem.ts";

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
    const step = { station: null, setUp: null, release: 0, mayStop: false, hook: null, gives: [], looks: [] };
    const after = { on: 0, windows: [{ opens: 20, shuts: null, preparation: null }], mend: null };
    const problem = {
      origin: 0,
      horizon: 3000,
      sessions: [
        { opens: 0, closes: 60 },
        { opens: 1440, closes: 1500 },
      ],
      hands: 1,
      stations: [],
      setUps: [],
      places: [],
      apart: [],
      air: [],
      looks: [],
      mostOut: null,
      prices: { late: 10, flow: 1, amends: 5, setUp: 1 },
      pieces: [0, 1].map(() => ({
        release: 0,
        due: 1400,
        weight: 1,
        cure: 5,
        begun: false,
        underLimit: false,
        hook: null,
      })),
      tasks: [0, 0, 1, 1].map((piece, index) => ({
        ...step,
        piece,
        minutes: 25,
        waits: index % 2 === 0 ? [] : [{ ...after, on: index - 1 }],
        running: false,
        ended: null,
      })),
    };
    // Each alone: 25, wait 20, then 1440 to 1465 and 5 of cure: 1470, 70 late. Twice 1470 + 10 x 70.
    expect(boundByPieces(problem)).toBe(2 * (1470 + 700));
  });
});

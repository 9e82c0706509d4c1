import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import { dispatch, firstFinish } from "../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../src/plan/prepare-dispatch.ts";
import { scorePlan } from "../../src/plan/score.ts";
import { randomProblem } from "./random-problem.ts";

const runs = { numRuns: 1500 };

describe("a plan by dispatch, whatever the shop", () => {
  test("passes the checker", () => {
    fc.assert(
      fc.property(randomProblem, (problem) => {
        expect(checkPlan(problem, dispatch(prepareDispatch(problem)))).toEqual([]);
      }),
      runs,
    );
  });

  test("is the same every time", () => {
    fc.assert(
      fc.property(randomProblem, (problem) => {
        const again = structuredClone(problem);
        expect(dispatch(prepareDispatch(again))).toEqual(dispatch(prepareDispatch(problem)));
      }),
      { numRuns: 200 },
    );
  });

  test("still passes when some tasks are left for the rest of the session", () => {
    fc.assert(
      fc.property(randomProblem, fc.nat(), (problem, pick) => {
        const task = pick % problem.tasks.length;
        const until = problem.sessions[0]?.closes ?? 0;
        const prepared = prepareDispatch(problem);
        const plan = dispatch(prepared, { tasks: [task], until });
        expect(checkPlan(problem, plan)).toEqual([]);
        const early = plan.visits.filter((visit) => visit.task === task && visit.start < until);
        if (problem.tasks[task]?.running === false) expect(early).toEqual([]);
        const piece = problem.tasks[task]?.piece ?? 0;
        expect(firstFinish(prepared, { tasks: [task], until }, [piece])).toBe(plan.finish[piece]);
      }),
      { numRuns: 400 },
    );
  });

  test("costs what its visits cost, and never less than the work alone", () => {
    fc.assert(
      fc.property(randomProblem, (problem) => {
        const score = scorePlan(problem, dispatch(prepareDispatch(problem)));
        const { total, tardiness, flow, amends, setUp } = score;
        expect(total).toBe(10 * tardiness + flow + 5 * amends + setUp);
        expect(Math.min(tardiness, flow, amends, setUp)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});

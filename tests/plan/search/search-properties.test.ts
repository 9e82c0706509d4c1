import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import { scorePlan } from "../../../src/plan/score.ts";
import { beginSearch, leaveUntil, SearchesWithout } from "../../../src/plan/search/search.ts";
import { randomProblem } from "../random-problem.ts";

describe("a plan by search, whatever the shop", () => {
  test("passes the checker, costs what it says, and no more than dispatch", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
        const search = beginSearch(problem, { seed, warm: null });
        const dispatched = scorePlan(problem, dispatch(prepareDispatch(problem))).total;
        for (const rounds of [0, 40, 200]) {
          search.go(rounds);
          const { plan, score, bound } = search.found;
          expect(checkPlan(problem, plan)).toEqual([]);
          expect(score).toEqual(scorePlan(problem, plan));
          expect(score.total).toBeLessThanOrEqual(dispatched);
          expect(bound).toBeLessThanOrEqual(score.total);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("is the same every time, however the rounds are portioned out", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
        const whole = beginSearch(problem, { seed, warm: null });
        whole.go(150);
        const portions = beginSearch(structuredClone(problem), { seed, warm: null });
        for (const rounds of [1, 49, 100]) portions.go(rounds);
        expect(portions.found).toEqual(whole.found);
      }),
      { numRuns: 30 },
    );
  });

  test("goes on from a plan found before, and is never worse than it", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(randomProblem, (problem) => {
        const first = beginSearch(problem, { seed: 1, warm: null });
        first.go(200);
        const { plan, score } = first.found;
        const again = beginSearch(problem, { seed: 2, warm: plan });
        expect(again.found.score.total).toBeLessThanOrEqual(score.total);
        // Looked at time and again: what is told of a plan must not be left over from another play.
        for (const rounds of [0, 5, 20, 40]) {
          again.go(rounds);
          expect(checkPlan(problem, again.found.plan)).toEqual([]);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("begins nothing that is left before its minute", () => {
    fc.assert(
      fc.property(randomProblem, fc.nat(), (problem, pick) => {
        const task = pick % problem.tasks.length;
        const until = problem.sessions[0]?.closes ?? 0;
        const left = leaveUntil(problem, { tasks: [task], until });
        const search = beginSearch(left, { seed: 1, warm: null });
        search.go(50);
        expect(checkPlan(left, search.found.plan)).toEqual([]);
        const early = search.found.plan.visits.filter((visit) => visit.task === task && visit.start < until);
        if (problem.tasks[task]?.running === false) expect(early).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test("without some work is as planned from the start, though all such plans share what is made ready", () => {
    fc.assert(
      fc.property(randomProblem, fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), (problem, picks) => {
        const whole = beginSearch(problem, { seed: 1, warm: null });
        whole.go(20);
        const { plan } = whole.found;
        const searches = new SearchesWithout(problem, plan, 1);
        const until = problem.sessions[0]?.closes ?? 0;
        const lefts = picks.map((pick) => ({ tasks: [pick % problem.tasks.length], until }));
        // All are begun before any goes on, so that none may see what another plays.
        const shared = lefts.map((leave) => searches.begin(leave));
        for (const [index, leave] of lefts.entries()) {
          const alone = beginSearch(leaveUntil(problem, leave), { seed: 1, warm: plan });
          const search = shared[index];
          for (const rounds of [0, 1, 40]) {
            alone.go(rounds);
            search?.go(rounds);
            expect(search?.found).toEqual(alone.found);
          }
        }
      }),
      { numRuns: 30 },
    );
  });
});

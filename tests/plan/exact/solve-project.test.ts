import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Project } from "../../../src/plan/exact/project.ts";
import { solveProject } from "../../../src/plan/exact/solve-project.ts";
import { enumerateJobShop, enumerateMakespan, isSchedule } from "./enumerate.ts";

const toTheEnd = () => false;

/** A project as random as it may be: waits of any sign, demands beyond what there is, work of no length. */
function someProject(most: number): fc.Arbitrary<Project> {
  return fc.integer({ min: 1, max: most }).chain((count) => {
    const activity = fc.nat(count - 1);
    const lag = fc.record({ from: activity, to: activity, least: fc.integer({ min: -5, max: 4 }) });
    const rigid = fc.record({ from: activity, to: activity, least: fc.integer({ min: 0, max: 4 }) });
    return fc.record({
      activities: fc.array(
        fc.record({
          duration: fc.nat(3),
          demands: fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 2 })),
        }),
        { minLength: count, maxLength: count },
      ),
      lags: fc
        .tuple(fc.array(lag, { maxLength: 2 * count }), fc.array(rigid, { maxLength: 1 }))
        .map(([open, tied]) => [
          ...open,
          ...tied.flatMap(({ from, to, least }) => [
            { from, to, least },
            { from: to, to: from, least: -least },
          ]),
        ]),
      capacities: fc.constantFrom([3, 2], [4, 3], [2, 2]),
    });
  });
}

describe("the exact search", () => {
  test("finds what trying every start finds, and proves that there is none where there is none", () => {
    let impossible = 0;
    fc.assert(
      fc.property(someProject(4), (project) => {
        // Longer than any schedule that is worth having: all durations and all waits one after the other.
        const horizon =
          project.activities.reduce((sum, { duration }) => sum + duration, 0) +
          project.lags.reduce((sum, { least }) => sum + Math.max(0, least), 0);
        const best = enumerateMakespan(project, Math.min(horizon, 24));
        const { status, makespan, starts, bound } = solveProject(project, toTheEnd);
        if (best === null) impossible++;
        expect({ status, makespan, bound }).toEqual({
          status: best === null ? "infeasible" : "optimal",
          makespan: best,
          bound: best,
        });
        if (best !== null) expect(isSchedule(project, starts ?? [], best)).toBe(true);
      }),
      { numRuns: 400 },
    );
    expect(impossible).toBeGreaterThan(20);
  });

  test("keeps every lag of two activities that a resource, and no lag, makes rigid", () => {
    // 1 and 2 together need 4 of the second resource's 3, so 2 starts 2 after 1; a lag has it at most 2 after.
    const project = {
      activities: [
        { duration: 1, demands: [2, 1] },
        { duration: 2, demands: [0, 2] },
        { duration: 2, demands: [3, 2] },
        { duration: 3, demands: [3, 2] },
        { duration: 2, demands: [3, 1] },
      ],
      lags: [
        { from: 1, to: 2, least: 1 },
        { from: 2, to: 1, least: -2 },
      ],
      capacities: [3, 3],
    };
    // All but 1 and 0 fill the first resource: 2 + 3 + 2, and 0's 2 leave no room beside them: 8 in all.
    expect(enumerateMakespan(project, 12)).toBe(8);
    const { makespan, starts } = solveProject(project, toTheEnd);
    expect(makespan).toBe(8);
    expect(isSchedule(project, starts ?? [], 8)).toBe(true);
  });

  test("finds the shortest of all orders of a job shop", () => {
    const visit = fc.record({ machine: fc.nat(2), duration: fc.integer({ min: 1, max: 9 }) });
    const jobs = fc.array(fc.array(visit, { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(jobs, (shop) => {
        const project = {
          activities: shop
            .flat()
            .map(({ machine, duration }) => ({ duration, demands: [0, 0, 0].with(machine, 1) })),
          lags: shop.flatMap((visits, job) => [
            { from: 3 * job, to: 3 * job + 1, least: visits[0]?.duration ?? 0 },
            { from: 3 * job + 1, to: 3 * job + 2, least: visits[1]?.duration ?? 0 },
          ]),
          capacities: [1, 1, 1],
        };
        expect(solveProject(project, toTheEnd).makespan).toBe(enumerateJobShop(shop));
      }),
      { numRuns: 150 },
    );
  });

  test("tells when it is stopped what it knows: nothing is shorter than its bound, nor the best longer than its own", () => {
    fc.assert(
      fc.property(someProject(8), fc.nat(6), (project, most) => {
        const whole = solveProject(project, toTheEnd);
        const cut = solveProject(project, (nodes) => nodes >= most);
        expect(cut.nodes).toBeLessThanOrEqual(most);
        if (cut.status === "optimal" || cut.status === "infeasible") {
          expect(cut.makespan).toBe(whole.makespan);
        } else {
          expect(cut.bound).toBeLessThanOrEqual(whole.bound ?? Number.POSITIVE_INFINITY);
        }
        if (cut.makespan === null) return;
        expect(isSchedule(project, cut.starts ?? [], cut.makespan)).toBe(true);
        expect(cut.makespan).toBeGreaterThanOrEqual(whole.makespan ?? Number.POSITIVE_INFINITY);
      }),
      { numRuns: 300 },
    );
  });

  test("gives the same answer to the same project", () => {
    fc.assert(
      fc.property(someProject(8), (project) => {
        expect(solveProject(project, toTheEnd)).toEqual(solveProject(project, toTheEnd));
      }),
      { numRuns: 50 },
    );
  });

  test("answers a project of nothing at once: it ends at 0", () => {
    expect(solveProject({ activities: [], lags: [], capacities: [] }, toTheEnd)).toEqual({
      status: "optimal",
      makespan: 0,
      starts: [],
      bound: 0,
      nodes: 0,
    });
  });
});

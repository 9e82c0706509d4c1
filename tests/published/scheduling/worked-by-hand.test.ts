import { describe, expect, test } from "vitest";
import type { Project } from "../../../src/plan/exact/project.ts";
import { generateSchedule } from "../../../src/plan/exact/projects/generate-schedule.ts";
import { solveProject } from "../../../src/plan/exact/solve-project.ts";

function solve(project: Project) {
  const { status, makespan } = solveProject(project, () => false);
  return { status, makespan };
}

// R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM Journal on Applied Mathematics 17, 1969 (data and
// citation from memory; each makespan simulated again, independently).
describe("Graham's nine tasks on machines alike", () => {
  const durations = [3, 2, 2, 2, 4, 4, 4, 4, 9];
  const arcs = [
    [0, 8],
    [3, 4],
    [3, 5],
    [3, 6],
    [3, 7],
  ] as const;
  const list = [0, 1, 2, 3, 4, 5, 6, 7, 8];
  const given = { durations, arcs: arcs as readonly (readonly [number, number])[], machines: 3, list };

  function project({ durations, arcs, machines }: typeof given): Project {
    return {
      activities: durations.map((duration) => ({ duration, demands: [1] })),
      lags: arcs.map(([from, to]) => ({ from, to, least: durations[from] ?? 0 })),
      capacities: [machines],
    };
  }

  /** When a greedy hand ends that takes whatever can start, in the order of its list. */
  function endByList(shop: typeof given): number {
    const rank = shop.durations.map((_, task) => shop.list.indexOf(task));
    const starts = generateSchedule(project(shop), rank, "parallel");
    return Math.max(...starts.map((start, task) => start + (shop.durations[task] ?? 0)));
  }

  test("take 12, by the list and at best", () => {
    expect(endByList(given)).toBe(12);
    expect(solve(project(given))).toEqual({ status: "optimal", makespan: 12 });
  });

  // At best: never sooner than task 0 and then 8, 3 + 9 = 12 (or 2 + 8 = 10), and that can be had.
  test.each([
    ["another list", { ...given, list: [0, 1, 3, 4, 5, 2, 8, 6, 7] }, 14, 12],
    ["a fourth machine", { ...given, machines: 4 }, 15, 12],
    ["every task shorter by 1", { ...given, durations: durations.map((duration) => duration - 1) }, 13, 10],
    ["two arcs fewer", { ...given, arcs: arcs.filter(([from, to]) => from !== 3 || to > 5) }, 16, 12],
  ])("end later by the list with %s, though not at best", (_, shop, byList, atBest) => {
    expect(endByList(shop)).toBe(byList);
    expect(solve(project(shop))).toEqual({ status: "optimal", makespan: atBest });
  });
});

// L. G. Mitten, Sequencing n jobs on two machines with arbitrary time lags, Management Science 5, 1959: jobs with
// a <= b first, by rising a + lag, then the others by falling lag + b. Own numbers, checked over all orders.
test("two machines with waits between: 29, by the rule and by search", () => {
  const jobs = [
    { a: 4, lag: 6, b: 2 },
    { a: 2, lag: 9, b: 5 },
    { a: 7, lag: 1, b: 6 },
    { a: 3, lag: 4, b: 3 },
    { a: 6, lag: 8, b: 1 },
  ];
  // Job 3 has 3 + 4 = 7 and job 1 has 2 + 9 = 11; then 8 + 1 = 9, 6 + 2 = 8, 1 + 6 = 7.
  const rule = [3, 1, 4, 0, 2];
  let first = 0;
  let second = 0;
  for (const job of rule) {
    const { a = 0, lag = 0, b = 0 } = jobs[job] ?? {};
    first += a;
    second = Math.max(second, first + lag) + b;
  }
  expect(second).toBe(29);
  const project = {
    activities: jobs.flatMap(({ a, b }) => [
      { duration: a, demands: [1, 0] },
      { duration: b, demands: [0, 1] },
    ]),
    lags: jobs.map(({ a, lag }, job) => ({ from: 2 * job, to: 2 * job + 1, least: a + lag })),
    capacities: [1, 1],
  };
  expect(solve(project)).toEqual({ status: "optimal", makespan: 29 });
});

// Own numbers; every order of the eight steps was enumerated.
describe("one pair of hands, two steps a job and a window between", () => {
  const jobs = [
    { first: 3, min: 5, max: 8, second: 2 },
    { first: 2, min: 7, max: 9, second: 4 },
    { first: 4, min: 3, max: 4, second: 3 },
    { first: 1, min: 10, max: 14, second: 2 },
  ];

  function project(mostOf: (job: { min: number; max: number }) => number): Project {
    return {
      activities: jobs.flatMap(({ first, second }) => [
        { duration: first, demands: [1] },
        { duration: second, demands: [1] },
      ]),
      lags: jobs.flatMap((job, index) => [
        { from: 2 * index, to: 2 * index + 1, least: job.first + job.min },
        { from: 2 * index + 1, to: 2 * index, least: -(job.first + mostOf(job)) },
      ]),
      capacities: [1],
    };
  }

  test("take 21, their eight steps having no minute to spare: 3 + 2 + 4 + 1 + 2 + 4 + 3 + 2", () => {
    expect(solve(project(({ max }) => max))).toEqual({ status: "optimal", makespan: 21 });
    expect(solve(project(() => 1000))).toEqual({ status: "optimal", makespan: 21 });
  });

  test("take 23 when each window is a single moment", () => {
    expect(solve(project(({ min }) => min))).toEqual({ status: "optimal", makespan: 23 });
  });
});

import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import type { Plan, Visit } from "../../src/plan/plan.ts";
import type { PlanSetUp, Problem } from "../../src/plan/problem.ts";
import { smallProblem, waitFor } from "./small-problem.ts";

/** A plan of plain steps, `[task, start, end]`, and other visits said whole. */
function planOf(
  visits: readonly (readonly [number, number, number] | Visit)[],
  finish: Plan["finish"],
  unplaced: readonly number[] = [],
): Plan {
  const whole = visits.map((visit): Visit => {
    if (!Array.isArray(visit)) return visit as Visit;
    const [task, start, end] = visit as readonly [number, number, number];
    return { task, part: "step", setUp: 0, start, end };
  });
  return { visits: whole, finish, unplaced };
}

/** A plan that holds, and one like it that breaks one thing. */
function expectOnly(problem: Problem, good: Plan, bad: Plan, wrong: string): void {
  expect(checkPlan(problem, good)).toEqual([]);
  expect(checkPlan(problem, bad)).toContain(wrong);
}

const two = [{}, { piece: 1 }];
const pot: PlanSetUp = {
  station: 0,
  minutes: 20,
  keeps: { way: "heat", minutes: 45 },
  putAway: 5,
  gives: [],
};
const station = { name: "lead pot", standing: null };

describe("the checker names", () => {
  test("work left out, and work cut short", () => {
    const problem = smallProblem([{}]);
    expectOnly(problem, planOf([[0, 0, 10]], [10]), planOf([], [null]), "task 0 is worked 0 of 10 min");
    expectOnly(problem, planOf([], [null], [0]), planOf([[0, 0, 9]], [9]), "task 0 is worked 9 of 10 min");
  });

  test("work in a closed bench, or over its closing", () => {
    const wrong = "task 0 is worked outside bench hours at 171";
    expectOnly(smallProblem([{}]), planOf([[0, 170, 180]], [180]), planOf([[0, 171, 181]], [181]), wrong);
  });

  test("hands-on in air that is unfit for it, from its first minute to its last, but not its set-up", () => {
    const tasks = [{ unfit: [[30, 60] as const], station: 0, setUp: 0 }];
    const problem = smallProblem(tasks, [{}], { stations: [station], setUps: [pot] });
    const begun = (start: number): Plan =>
      planOf([{ task: 0, part: "step", setUp: 20, start, end: start + 10 }], [start + 10]);
    // 20 to 30 ends just before it, 60 to 70 begins just after it with the pot lit from 40 on.
    expect(checkPlan(problem, begun(20))).toEqual([]);
    expectOnly(problem, begun(60), begun(21), "task 0 is worked in unfit air at 30");
    expectOnly(problem, begun(60), begun(59), "task 0 is worked in unfit air at 59");
  });

  test("two works in one pair of hands", () => {
    const problem = smallProblem(two, [{}, {}]);
    const good = planOf(
      [
        [0, 0, 10],
        [1, 10, 20],
      ],
      [10, 20],
    );
    expectOnly(
      problem,
      good,
      planOf(
        [
          [0, 0, 10],
          [1, 9, 19],
        ],
        [10, 19],
      ),
      "2 works at once at 9",
    );
  });

  test("a step before its window and after it", () => {
    const problem = smallProblem([{}, { waits: [waitFor(0, [[60, 90]])] }]);
    const wrong = (start: number) => `task 1 begins at ${start} without an open window after task 0`;
    const begun = (start: number) =>
      planOf(
        [
          [0, 0, 10],
          [1, start, start + 10],
        ],
        [start + 10],
      );
    expectOnly(problem, begun(70), begun(69), wrong(69));
    expectOnly(problem, begun(100), begun(101), wrong(101));
  });

  test("a late window without its preparation, and preparation nobody asked for", () => {
    const problem = smallProblem([
      {},
      {
        waits: [
          waitFor(0, [
            [60, 90],
            [90, null, 5],
          ]),
        ],
      },
    ]);
    const scuff: Visit = { task: 1, part: "preparation", setUp: 0, start: 115, end: 120 };
    const good = planOf([[0, 0, 10], scuff, [1, 120, 130]], [130]);
    expectOnly(
      problem,
      good,
      planOf(
        [
          [0, 0, 10],
          [1, 120, 130],
        ],
        [130],
      ),
      "task 1 begins at 120 without its preparation",
    );
    const early = planOf([[0, 0, 10], { ...scuff, start: 60, end: 65 }, [1, 70, 80]], [80]);
    expect(checkPlan(problem, early)).toContain("task 1 is prepared though no window asks for it");
  });

  test("a cold pot, one kept too long, and no time to put it away", () => {
    const pour = { station: 0, setUp: 0, minutes: 6 };
    const problem = smallProblem([pour, { ...pour, piece: 1 }], [{}, {}], {
      stations: [station],
      setUps: [pot],
    });
    const first: Visit = { task: 0, part: "step", setUp: 20, start: 20, end: 26 };
    const second = (start: number): Plan => planOf([first, [1, start, start + 6]], [26, start + 6]);
    // 26 + 45 is the last minute it keeps.
    expectOnly(problem, second(71), second(72), "what task 1 needs at 72 does not stand");
    const late: Visit = { ...first, task: 1, start: 170, end: 176 };
    expect(checkPlan(problem, planOf([first, late], [26, 176]))).toEqual([
      "no time to put away after task 1",
    ]);
  });

  test("dust in a wet coat", () => {
    const gives = (what: number, lasts: number) => [{ what, lasts, fromSetUp: false }];
    const tasks = [{ gives: gives(0, 45) }, { piece: 1, gives: gives(1, 0) }];
    const problem = smallProblem(tasks, [{}, {}], { apart: [[0, 1]] });
    const sanded = (start: number): Plan =>
      planOf(
        [
          [0, 0, 10],
          [1, start, start + 10],
        ],
        [10, start + 10],
      );
    expectOnly(problem, sanded(55), sanded(54), "emission 0 of task 0 meets 1 of task 1 at 54");
  });

  test("more pieces than hooks", () => {
    const hook = { place: 0, until: 60 };
    const problem = smallProblem([{ hook }, { piece: 1, hook }], [{}, {}], {
      places: [{ name: "rack", hooks: 1 }],
    });
    const hung = (start: number): Plan =>
      planOf(
        [
          [0, 0, 10],
          [1, start, start + 10],
        ],
        [10, start + 10],
      );
    expectOnly(problem, hung(60), hung(59), "2 hang at place 0 at 69");
  });

  test("busy hands at a look, and a look after closing", () => {
    const problem = smallProblem([{ looks: [5] }, { piece: 1 }], [{}, {}]);
    const good = planOf(
      [
        [0, 0, 10],
        [1, 16, 26],
      ],
      [10, 26],
    );
    expectOnly(
      problem,
      good,
      planOf(
        [
          [0, 0, 10],
          [1, 15, 25],
        ],
        [10, 25],
      ),
      "no free hands for the look at 15",
    );
    const late = planOf(
      [
        [1, 0, 10],
        [0, 165, 175],
      ],
      [175, 10],
    );
    expect(checkPlan(problem, late)).toContain("the look 5 min after task 0 falls outside bench hours");
  });

  test("too many out, a piece begun too early, and a finish that is not so", () => {
    const limit = { underLimit: true, cure: 50 };
    const problem = smallProblem(two, [limit, limit], { mostOut: 1 });
    const begun = (start: number): Plan =>
      planOf(
        [
          [0, 0, 10],
          [1, start, start + 10],
        ],
        [60, start + 60],
      );
    expectOnly(problem, begun(60), begun(59), "piece 1 is begun while 1 are out");
    const released = smallProblem([{}], [{ release: 30 }]);
    expectOnly(
      released,
      planOf([[0, 30, 40]], [40]),
      planOf([[0, 29, 39]], [39]),
      "task 0 is worked before minute 30",
    );
    expect(checkPlan(released, planOf([[0, 30, 40]], [41]))).toEqual(["piece 0 is finished at 40, not 41"]);
  });

  test("a split that may not be, and a part that is too short", () => {
    const parts = (at: number): Plan =>
      planOf(
        [
          [0, 0, at],
          [0, 1440, 1480 - at],
        ],
        [1480 - at],
      );
    const may = smallProblem([{ minutes: 40, mayStop: true }]);
    expectOnly(may, parts(20), parts(30), "task 0 has a part under 15 min");
    expect(checkPlan(smallProblem([{ minutes: 40 }]), parts(20))).toEqual(["task 0 may not be split"]);
  });
});

import { expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { planOf } from "../../../src/plan/search/plan-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

test("of a task that was split, what was done before time ran out is shown with its preparation", () => {
  const prepared = waitFor(0, [[0, null, 5]]);
  const problem = smallProblem([{}, { minutes: 300, mayStop: true, waits: [prepared] }], [{}], {
    horizon: 1_440,
    sessions: [{ opens: 0, closes: 180 }],
  });
  const bench = openBench(problem);
  new Player(bench).adopt({ order: bench.tasks, decided: new Int32Array(4), cost: 0 });
  const plan = planOf(bench);
  expect(plan.visits).toEqual([
    { task: 0, part: "step", setUp: 0, start: 0, end: 10 },
    { task: 1, part: "preparation", setUp: 0, start: 10, end: 15 },
    { task: 1, part: "step", setUp: 0, start: 15, end: 180 },
  ]);
  expect(plan.unplaced).toEqual([1]);
  expect(checkPlan(problem, plan)).toEqual([]);
});

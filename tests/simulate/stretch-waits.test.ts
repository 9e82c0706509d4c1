import { expect, test } from "vitest";
import { stretchWaits } from "../../src/simulate/stretch-waits.ts";
import { smallProblem, waitFor } from "../plan/small-problem.ts";

test("coats still to be laid open later, and never after they shut", () => {
  // Task 0 is done, so its wait is as it is; 100 and 190 stretched by 1.1 are 110 and 209, but it shuts at 200.
  const waits = (on: number) => [
    waitFor(on, [
      [100, 150],
      [190, 200, 5],
    ]),
  ];
  const problem = smallProblem([{ ended: -10 }, { waits: waits(0) }, { waits: waits(1) }]);
  const { tasks } = stretchWaits(problem, 1.1);
  expect(tasks[1]?.waits).toEqual(waits(0));
  expect(tasks[2]?.waits[0]?.windows.map(({ opens, shuts }) => [opens, shuts])).toEqual([
    [110, 150],
    [200, 200],
  ]);
  expect(stretchWaits(problem, 1)).toBe(problem);
});

test("a wait in air that changes stays as the air makes it", () => {
  const table = { every: 60, reached: [120, null] };
  const wait = { on: 0, windows: [{ opens: table, shuts: null, preparation: null }], mend: null };
  const { tasks } = stretchWaits(smallProblem([{}, { waits: [wait] }]), 1.1);
  expect(tasks[1]?.waits[0]?.windows[0]?.opens).toBe(table);
});

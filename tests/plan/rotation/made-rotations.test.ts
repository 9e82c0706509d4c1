import { describe, expect, test } from "vitest";
import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { readRotation } from "../../bench/plan/read-rotation.ts";
import type { RotationFile } from "../../bench/plan/rotation-file.ts";
import { checkRotation, spanOfRotation } from "./check-rotation.ts";
import { madeRotations, rotationFileOf } from "./made-rotations.ts";

const patient = { stop: () => false };

describe("routings whose least span was proven by a general constraint solver", () => {
  test.each(madeRotations.filter(({ least }) => least !== null))(
    "$name: $least minutes at one a day, proven",
    (made) => {
      const file = rotationFileOf(made);
      const { status, span, bound, starts } = solveCircle(readRotation(file, 1440), patient);
      expect({ status, span, bound }).toEqual({ status: "optimal", span: made.least, bound: made.least });
      expect(checkRotation(file, 1440, starts ?? [])).toEqual([]);
      expect(spanOfRotation(file, starts ?? [])).toBe(made.least);
    },
  );

  test("sixteen steps in evening hours: 159 min of work and four families at 8 min are more than 180", () => {
    const file = rotationFileOf(made("sixteen steps in evening hours"));
    const work = file.steps.reduce((sum, { p }) => sum + p, 0);
    const families = new Set(file.steps.flatMap(({ family }) => family ?? []));
    expect({ work, families: families.size }).toEqual({ work: 159, families: 4 });
    // 159 + 4 x 8 = 191
    expect(solveCircle(readRotation(file, 1440), patient)).toMatchObject({
      status: "infeasible",
      starts: null,
    });
  });

  test("the same at one every two days has room", () => {
    const file = rotationFileOf(made("sixteen steps in evening hours"));
    const { status, starts } = solveCircle(readRotation(file, 2880), patient);
    expect(status).toBe("optimal");
    expect(checkRotation(file, 2880, starts ?? [])).toEqual([]);
  });

  test("the same search gives the same rotation", () => {
    const circle = readRotation(rotationFileOf(made("twelve steps in evening hours")), 1440);
    expect(solveCircle(circle, patient)).toEqual(solveCircle(circle, patient));
  });

  test("a search that is stopped says so, with what it has", () => {
    const circle = readRotation(rotationFileOf(made("twelve steps in evening hours")), 1440);
    expect(solveCircle(circle, { stop: () => true })).toMatchObject({ status: "unknown", starts: null });
    const { status, bound } = solveCircle(circle, { stop: (nodes) => nodes > 8 });
    expect(["feasible", "unknown"]).toContain(status);
    expect(bound).toBeLessThanOrEqual(6728);
  });
});

describe("the check of a rotation", () => {
  const file: RotationFile = {
    ...rotationFileOf(made("twelve steps in daily hours")),
    hooks: 1,
    finalCure: 0,
    steps: [
      step({ name: "sand", p: 10, tags: ["dust"] }),
      step({ name: "white", p: 5, station: "booth", family: "white", marks: { wet: 20 } }),
      step({ name: "warm", p: 5, station: "booth", family: "warm", hold: { holder: "rack", minutes: 60 } }),
    ],
    edges: [
      [0, 1, 0, null],
      [1, 2, 30, 90],
    ],
  };

  // Bench 540 to 1020; each colour needs 8 min of set-up, for the other one was loaded before.
  test.each([
    { starts: [540, 558, 601], wrong: [] },
    { starts: [539, 558, 601], wrong: ["0 is worked at 539, outside the bench"] },
    { starts: [540, 557, 601], wrong: ["0 and 1 share the hands at 549"] },
    { starts: [540, 558, 592], wrong: ["1 to 2 waits 29"] },
    { starts: [540, 558, 654], wrong: ["1 to 2 waits 91"] },
    { starts: [995, 1440 + 980, 1440 + 1015], wrong: ["0 runs in the wet of 1"] },
  ])("finds in $starts: $wrong", ({ starts, wrong }) => {
    expect(checkRotation(file, 1440, starts)).toEqual(wrong);
  });
});

function made(name: string): (typeof madeRotations)[number] {
  const found = madeRotations.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

function step(more: Partial<RotationFile["steps"][number]>): RotationFile["steps"][number] {
  return { name: "", p: 1, station: null, family: null, tags: [], marks: {}, hold: null, ...more };
}

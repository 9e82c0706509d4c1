import { describe, expect, test } from "vitest";
import { solveProject } from "../../../src/plan/exact/solve-project.ts";
import { breachesOfProject } from "./breaches.ts";
import { type ProjectInstance, readActivities } from "./instance.ts";
import plain from "./projects.json" with { type: "json" };
import ten from "./projects-with-windows-10.json" with { type: "json" };
import twenty from "./projects-with-windows-20.json" with { type: "json" };

const sets: { source: string; instances: ProjectInstance[] }[] = [
  { source: plain.source, instances: plain.instances },
  { source: ten.source, instances: ten.instances },
  { source: twenty.source, instances: twenty.instances },
];

describe.each(sets)("$source", ({ instances }) => {
  test.each(instances.filter(({ optimum }) => optimum !== null))(
    "$name: the shortest schedule ends at $optimum, proven",
    (instance) => {
      const { status, makespan, bound, starts } = solveProject(readActivities(instance), () => false);
      const { optimum } = instance;
      expect({ status, makespan, bound }).toEqual({ status: "optimal", makespan: optimum, bound: optimum });
      expect(breachesOfProject(instance, starts ?? [])).toEqual([]);
      // The last activity ends all, so its start is the makespan.
      expect(starts?.at(-1)).toBe(optimum);
    },
  );
});

describe("projects whose windows and resources clash", () => {
  const impossible = sets.flatMap(({ instances }) => instances.filter(({ optimum }) => optimum === null));

  test("are three of those here", () => {
    expect(impossible.map(({ name }) => name)).toEqual(["smj10_psp17", "ubo10_psp1", "ubo10_psp27"]);
  });

  test.each(impossible)("$name: there is no schedule, proven", (instance) => {
    expect(solveProject(readActivities(instance), () => false)).toMatchObject({
      status: "infeasible",
      makespan: null,
      starts: null,
    });
  });
});

describe("the check of schedules", () => {
  const small = ten.instances.find(({ name }) => name === "smj10_psp3");

  test("finds the wait that is not kept and the resource of which too much is taken", () => {
    if (small === undefined) throw new Error("an instance is missing");
    // All at once: 5 cannot be 11 after 2, and demands of 3, 5 and more meet a capacity of 5.
    const wrong = breachesOfProject(small, new Array<number>(12).fill(0));
    expect(wrong).toContain("5 does not keep 11 after 2");
    expect(wrong).toContain("too much is taken of 0 at 0");
  });
});

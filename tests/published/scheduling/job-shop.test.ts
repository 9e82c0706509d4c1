import { describe, expect, test } from "vitest";
import { solveProject } from "../../../src/plan/exact/solve-project.ts";
import { breachesOfShop } from "./breaches.ts";
import flowShops from "./flow-shops-without-waiting.json" with { type: "json" };
import { readJobs, type ShopInstance } from "./instance.ts";
import jobShops from "./job-shops.json" with { type: "json" };

/** When the last visit ends, reckoned from the text of the instance. */
function lastEnd({ jobs }: ShopInstance, starts: readonly number[]): number {
  const durations = jobs.flatMap((job) =>
    [...job.matchAll(/:(\d+)/g)].map(([, duration]) => Number(duration)),
  );
  return Math.max(...durations.map((duration, visit) => (starts[visit] ?? Number.NaN) + duration));
}

/** The visit that starts last goes to the very beginning, where its job and its machine have other work. */
function spoil(starts: readonly number[]): number[] {
  const last = starts.indexOf(Math.max(...starts));
  return starts.map((start, at) => (at === last ? 0 : start));
}

describe.each([
  { source: jobShops.source, instances: jobShops.instances, waiting: true },
  { source: flowShops.source, instances: flowShops.instances, waiting: false },
])("$source", ({ instances, waiting }) => {
  test.each(instances)("$name: the shortest schedule ends at $optimum, proven", (instance) => {
    const { status, makespan, bound, starts } = solveProject(readJobs(instance, waiting), () => false);
    expect({ status, makespan, bound }).toEqual({
      status: "optimal",
      makespan: instance.optimum,
      bound: instance.optimum,
    });
    expect(breachesOfShop(instance, starts ?? [], waiting)).toEqual([]);
    expect(lastEnd(instance, starts ?? [])).toBe(instance.optimum);
    expect(breachesOfShop(instance, spoil(starts ?? []), waiting)).not.toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { luby } from "../../../src/plan/exact/conflict/luby.ts";
import type { Project } from "../../../src/plan/exact/project.ts";
import { generateSchedule } from "../../../src/plan/exact/projects/generate-schedule.ts";
import { justify } from "../../../src/plan/exact/projects/justify.ts";
import { makeProjectModel } from "../../../src/plan/exact/projects/project-model.ts";
import { findSequence } from "../../../src/plan/exact/projects/sequence.ts";
import { isSchedule } from "./enumerate.ts";

/** Up to eight activities, each waiting for some with lower numbers. */
const project: fc.Arbitrary<Project> = fc
  .array(
    fc.record({
      duration: fc.nat(5),
      demands: fc.tuple(fc.nat(3), fc.nat(2)),
      after: fc.array(fc.nat(7), { maxLength: 2 }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((rows) => ({
    activities: rows.map(({ duration, demands }) => ({ duration, demands })),
    lags: rows.flatMap(({ after }, to) =>
      after.filter((from) => from < to).map((from) => ({ from, to, least: rows[from]?.duration ?? 0 })),
    ),
    capacities: [3, 2],
  }));

function endOf({ activities }: Project, starts: readonly number[]): number {
  return Math.max(0, ...activities.map(({ duration }, at) => (starts[at] ?? 0) + duration));
}

describe("schedule generation", () => {
  test("keeps every lag and resource, by both schemes, and justifying makes it no longer", () => {
    fc.assert(
      fc.property(project, fc.infiniteStream(fc.nat(99)), fc.boolean(), (given, ranks, isSerial) => {
        const rank = given.activities.map(() => ranks.next().value as number);
        const starts = generateSchedule(given, rank, isSerial ? "serial" : "parallel");
        expect(isSchedule(given, starts, endOf(given, starts))).toBe(true);
        const justified = justify(given, starts);
        expect(isSchedule(given, justified, endOf(given, justified))).toBe(true);
        expect(endOf(given, justified)).toBeLessThanOrEqual(endOf(given, starts));
      }),
    );
  });
});

describe("jobs that must come in sequence", () => {
  test("take what the best of all orders takes, without waiting on three machines", () => {
    const jobs = fc.array(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 }), {
      minLength: 2,
      maxLength: 5,
    });
    fc.assert(
      fc.property(jobs, (shop) => {
        const model = makeProjectModel(flowShop(shop));
        expect(model === null ? null : findSequence(model)?.bound).toBe(Math.min(...ends(shop, [])));
      }),
      { numRuns: 60 },
    );
  });
});

/** A flow shop in which each operation starts the moment the one before it ends. */
function flowShop(jobs: readonly (readonly number[])[]): Project {
  return {
    activities: jobs.flatMap((job) =>
      job.map((duration, machine) => ({ duration, demands: [0, 0, 0].with(machine, 1) })),
    ),
    lags: jobs.flatMap((job, number) =>
      [0, 1].flatMap((machine) => {
        const [from, to, least] = [3 * number + machine, 3 * number + machine + 1, job[machine] ?? 0];
        return [
          { from, to, least },
          { from: to, to: from, least: -least },
        ];
      }),
    ),
    capacities: [1, 1, 1],
  };
}

/** The end of every order, each job begun as soon as no machine makes it wait. */
function ends(jobs: readonly (readonly number[])[], free: readonly number[]): number[] {
  if (jobs.length === 0) return [Math.max(...free)];
  return jobs.flatMap((job, number) => {
    const lead = job.map((_, machine) => job.slice(0, machine).reduce((sum, minutes) => sum + minutes, 0));
    const start = Math.max(0, ...lead.map((minutes, machine) => (free[machine] ?? 0) - minutes));
    const after = lead.map((minutes, machine) => start + minutes + (job[machine] ?? 0));
    return ends(jobs.toSpliced(number, 1), after);
  });
}

test("restarts follow Luby's sequence", () => {
  // M. Luby, A. Sinclair, D. Zuckerman, Optimal speedup of Las Vegas algorithms, Information Processing Letters 47, 1993.
  const first = Array.from({ length: 15 }, (_, index) => luby(index + 1));
  expect(first).toEqual([1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
});

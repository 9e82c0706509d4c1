import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import type { Task } from "../../../src/plan/problem.ts";
import type { BenchTask } from "../../../src/plan/search/bench.ts";
import { Calendar, NEVER } from "../../../src/plan/search/calendar.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { StartGrid } from "../../../src/plan/search/start-grid.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

/** Sessions of 180 min from 0 and from 1440, with a start each hour. */
function hourly(...tasks: readonly Partial<Task>[]): { grid: StartGrid; tasks: readonly BenchTask[] } {
  const bench = openBench(smallProblem(tasks));
  return { grid: new StartGrid(bench.calendar, 1440 + 180, 60), tasks: bench.tasks };
}

test("starts are those of open hours, and tell how long the bench was open before", () => {
  const { grid } = hourly({});
  expect(grid.minutes).toEqual([0, 60, 120, 1440, 1500, 1560]);
  expect(grid.openBefore).toEqual([0, 60, 120, 180, 240, 300]);
  expect(grid.open).toBe(360);
  const calendar = new Calendar([
    { opens: -60, closes: 120 },
    { opens: 1440, closes: 1620 },
  ]);
  expect([0, 50, 120, 1440, 1500, 9000].map((minute) => calendar.openBefore(minute))).toEqual([
    0, 50, 120, 120, 180, 300,
  ]);
  expect([-5, 0, 1, 120, 121, 1561].map((minute) => grid.from(minute))).toEqual([0, 0, 1, 2, 3, 6]);
});

describe("a task ends", () => {
  test("within its session", () => {
    expect(endsOf({ minutes: 70 })).toEqual([70, 130, NEVER, 1510, 1570, NEVER]);
  });

  test("in a later one, if it may stop", () => {
    expect(endsOf({ minutes: 70, mayStop: true })).toEqual([70, 130, 1450, 1510, 1570, NEVER]);
  });

  test("not before it is released, and not in unfit air", () => {
    expect(endsOf({ minutes: 10, release: 60 })).toEqual([NEVER, 70, 130, 1450, 1510, 1570]);
    expect(endsOf({ minutes: 10, unfit: [[65, 1441]] })).toEqual([10, NEVER, NEVER, NEVER, 1510, 1570]);
  });
});

describe("the task after it begins", () => {
  test("whenever it is done, if it waits for nothing", () => {
    expect(followersOf(null)).toEqual([
      [1, 5],
      [2, 5],
      [3, 5],
      [4, 5],
      [5, 5],
      [6, 5],
    ]);
  });

  test("in its windows, or at the first start after a window that shuts between two", () => {
    // Done at 10, 70, 130: open from 100 to 150, from 160 to 210 with no start within an hour, and overnight.
    expect(followersOf([90, 140]).slice(0, 3)).toEqual([
      [2, 2],
      [3, 2],
      [3, 2],
    ]);
    // From 20 to 30, from 80 to 90, and from 140 to 150: each shuts before the next full hour.
    expect(followersOf([10, 20]).slice(0, 3)).toEqual([
      [1, 1],
      [2, 2],
      [3, 2],
    ]);
  });
});

function endsOf(task: Partial<Task>): number[] {
  const { grid, tasks } = hourly(task);
  return [...grid.endsOf(at(tasks, 0))];
}

/** By start of a task of ten minutes: the first and the last start of the next one. */
function followersOf(window: readonly [number, number] | null): number[][] {
  const { grid, tasks } = hourly({}, { waits: window === null ? [] : [waitFor(0, [window])] });
  const wait = at(tasks, 1).waits[0] ?? null;
  const { first, last } = grid.followers(grid.endsOf(at(tasks, 0)), wait);
  return [...first].map((start, place) => [start, at([...last], place)]);
}

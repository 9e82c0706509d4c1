import type { Minutes } from "../../../time/instant.ts";
import type { Problem } from "../../problem.ts";
import type { Literal } from "../conflict/arcs.ts";
import { isOne, isZero, type ModelDraft } from "../conflict/model-draft.ts";
import type { LongestPaths } from "../projects/longest-paths.ts";
import type { TaskTimes } from "./shop-tasks.ts";

/**
 * Which of two tasks comes before: the literal that says so of the one at `a` and the one at `b`; null: it always
 * does; undefined: it never does.
 */
export type Before = (a: number, b: number) => Literal | null | undefined;

/**
 * Adds what one pair of hands asks: of every two tasks one comes first, and the other begins when it has ended, the
 * air has cleared, and what it left at the station has been set up anew.
 *
 * @param paths between places in `tasks`
 */
export function addOrders(
  draft: ModelDraft,
  problem: Problem,
  tasks: readonly TaskTimes[],
  paths: LongestPaths,
): Before {
  const count = tasks.length;
  const orders: (Literal | null | undefined)[] = new Array(count * count);
  for (const [a, one] of tasks.entries()) {
    for (let b = a + 1; b < count; b++) {
      const other = tasks[b] as TaskTimes;
      const known = findOrder(
        draft,
        one,
        other,
        paths.length[a * count + b] as number,
        paths.length[b * count + a] as number,
      );
      const way = known === null ? draft.addWay(one.begin, other.begin) : null;
      orders[a * count + b] = way === null ? (known === "before" ? null : undefined) : isOne(way);
      orders[b * count + a] = way === null ? (known === "after" ? null : undefined) : isZero(way);
      if (known !== "after") follow(draft, problem, one, other, orders[a * count + b] ?? null);
      if (known !== "before") follow(draft, problem, other, one, orders[b * count + a] ?? null);
    }
  }
  return (a, b) => orders[a * count + b];
}

/** The order of two tasks that waits or bounds leave no choice about. */
function findOrder(
  draft: ModelDraft,
  one: TaskTimes,
  other: TaskTimes,
  there: number,
  back: number,
): "before" | "after" | null {
  // One that runs already, with another, does not wait for it.
  if (there >= 0 || one.about.running) return "before";
  if (back >= 0 || other.about.running) return "after";
  // Where the one cannot end before the other must have started, it comes after.
  if (draft.least(one.start) + one.about.minutes > draft.most(other.begin)) return "after";
  if (draft.least(other.start) + other.about.minutes > draft.most(one.begin)) return "before";
  return null;
}

/** Adds what lies between a task and one that comes after it. */
function follow(
  draft: ModelDraft,
  problem: Problem,
  one: TaskTimes,
  other: TaskTimes,
  condition: Literal | null,
): void {
  if (one.isFixed && other.isFixed) return;
  const { minutes } = one.about;
  const { beforeBegin, beforeStart } = clearing(problem, one, other);
  draft.keep(one.start, other.begin, minutes + beforeBegin, condition);
  const needed = Math.max(beforeStart, settingAnew(problem, one, other));
  if (needed > beforeBegin) draft.keep(one.start, other.start, minutes + needed, condition);
}

/** Minutes to set up for a task where another leaves something else standing. */
function settingAnew({ setUps }: Problem, one: TaskTimes, other: TaskTimes): Minutes {
  const { setUp: left, station } = one.about;
  const { setUp: needed, station: its } = other.about;
  if (left === null || needed === null || left === needed || station !== its) return 0;
  return setUps[needed]?.minutes ?? 0;
}

/** Minutes for the air to clear after a task, before another begins and before it starts. */
function clearing(
  { apart }: Problem,
  one: TaskTimes,
  other: TaskTimes,
): { beforeBegin: Minutes; beforeStart: Minutes } {
  let beforeBegin = 0;
  let beforeStart = 0;
  for (const { what, lasts } of one.about.gives) {
    for (const { what: its, fromSetUp } of other.about.gives) {
      if (!apart.some(([a, b]) => (a === what && b === its) || (b === what && a === its))) continue;
      if (fromSetUp) beforeBegin = Math.max(beforeBegin, lasts);
      beforeStart = Math.max(beforeStart, lasts);
    }
  }
  return { beforeBegin, beforeStart };
}

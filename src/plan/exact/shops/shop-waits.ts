import type { Minutes } from "../../../time/instant.ts";
import type { Problem, Task } from "../../problem.ts";
import type { ModelDraft } from "../conflict/model-draft.ts";
import type { StartLag } from "../project.ts";
import { findLongestPaths, type LongestPaths } from "../projects/longest-paths.ts";
import { longestLag, shortestLag } from "./lag-bounds.ts";
import type { TaskTimes } from "./shop-tasks.ts";

/**
 * Adds the waits between tasks: from the opening of the first window to the shut of the last that asks for no
 * preparation.
 *
 * @returns the longest paths from start to start by waits alone, between places in `tasks`; null: they contradict
 */
export function addWaits(
  draft: ModelDraft,
  problem: Problem,
  tasks: readonly TaskTimes[],
): LongestPaths | null {
  const places = new Map(tasks.map(({ task }, place) => [task, place]));
  const lags: StartLag[] = [];
  for (const [to, { about, start, isFixed }] of tasks.entries()) {
    if (about.running) continue;
    for (const { on, least, most } of waitsOf(about)) {
      const from = places.get(on);
      const before = problem.tasks[on];
      if (from === undefined) {
        const ended = before?.ended ?? 0;
        if (!isFixed) draft.narrow(start, ended + least, ended + (most ?? Number.POSITIVE_INFINITY));
        continue;
      }
      const minutes = before?.minutes ?? 0;
      lags.push({ from, to, least: minutes + least });
      if (most !== null) lags.push({ from: to, to: from, least: -minutes - most });
    }
  }
  for (const { from, to, least } of lags) {
    draft.keep((tasks[from] as TaskTimes).start, (tasks[to] as TaskTimes).start, least);
  }
  return findLongestPaths(tasks.length, lags);
}

interface PlainWait {
  readonly on: number;
  readonly least: Minutes;
  readonly most: Minutes | null;
}

/** Windows that ask for preparation are left unused where there are others. */
function waitsOf({ waits }: Task): PlainWait[] {
  return waits.map(({ on, windows }) => {
    const plain = windows.filter(({ preparation }) => preparation === null);
    const opens = (plain[0] ?? windows[0])?.opens ?? 0;
    const shuts = plain.length === 0 ? null : (plain.at(-1)?.shuts ?? null);
    return { on, least: shortestLag(opens), most: shuts === null ? null : longestLag(shuts) };
  });
}

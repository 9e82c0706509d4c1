import type { Plan, Visit } from "../plan.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/** The plan that was just played, as visits. */
export function planOf({ tasks, pieces }: Bench): Plan {
  const visits = tasks.flatMap(visitsOf);
  return {
    visits: visits.sort((a, b) => a.start - b.start || a.task - b.task),
    unplaced: tasks.filter(({ end }) => end >= NEVER).map(({ index }) => index),
    finish: pieces.map(({ finish }) => (finish >= NEVER ? null : finish)),
  };
}

/** Preparations in the order of the waits that ask for them, then the work itself or its parts. */
function visitsOf(task: BenchTask): Visit[] {
  const { index, begin, setUpMinutes, start, end, parts } = task;
  if (task.ended !== null) return [];
  if (parts.length > 0) {
    return [...preparationsOf(task), ...partsOf(task)];
  }
  if (end >= NEVER) return [];
  return [
    ...(begin < start ? preparationsOf(task) : []),
    { task: index, part: "step", setUp: setUpMinutes, start, end },
  ];
}

function preparationsOf({ index, begin, windows }: BenchTask): Visit[] {
  const visits: Visit[] = [];
  let from = begin;
  for (const { preparation } of windows) {
    if (preparation === null) continue;
    const end = from + preparation.minutes;
    visits.push({ task: index, part: "preparation", setUp: 0, start: from, end });
    from = end + preparation.settles;
  }
  return visits;
}

function partsOf({ index, parts }: BenchTask): Visit[] {
  const visits: Visit[] = [];
  for (let at = 0; at < parts.length; at += 3) {
    const [setUp = 0, start = 0, end = 0] = parts.slice(at, at + 3);
    visits.push({ task: index, part: "step", setUp, start, end });
  }
  return visits;
}

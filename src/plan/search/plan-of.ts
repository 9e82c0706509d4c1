import type { Minutes } from "../../time/instant.ts";
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
  const { index, setUpMinutes, start, end, parts } = task;
  if (task.ended !== null) return [];
  if (parts.length > 0) {
    // Of one for whose other parts no time was found, only they tell when it was begun.
    const [setUp = 0, first = 0] = parts;
    return [...preparationsOf(task, first - setUp), ...partsOf(task)];
  }
  if (end >= NEVER) return [];
  return [
    ...preparationsOf(task, start - setUpMinutes),
    { task: index, part: "step", setUp: setUpMinutes, start, end },
  ];
}

/** @param until when the set-up, or the work itself, begins */
function preparationsOf({ index, windows }: BenchTask, until: Minutes): Visit[] {
  const asked = windows.flatMap(({ preparation }) => preparation ?? []);
  const visits: Visit[] = [];
  let from = asked.reduce((least, { minutes, settles }) => least - minutes - settles, until);
  for (const { minutes, settles } of asked) {
    visits.push({ task: index, part: "preparation", setUp: 0, start: from, end: from + minutes });
    from += minutes + settles;
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

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import type { BenchRun, InTheAir, TaskRun } from "./bench-run.ts";
import type { Gives, PlanWindow } from "./problem.ts";
import type { Trial } from "./try-task.ts";

/**
 * The first minute from `t` on at which nothing is in the room that must keep apart from what the task, its set-up
 * and its preparation give off.
 */
export function clearOfAir(run: BenchRun, { prepared }: TaskRun, t: Minutes, trial: Trial): Minutes {
  if (run.air.length === 0) return t;
  let clear = t;
  const { start, setUp, end } = trial;
  const { gives } = prepared;
  for (let index = 0; index < gives.length; index++) {
    const { what, fromSetUp, lasts } = gives[index] as Gives;
    clear = Math.max(clear, clearOf(run, what, t, fromSetUp ? start - setUp : start, end + lasts));
  }
  if (trial.preparation === 0) return clear;
  for (const { given, from, until } of preparationsIn(trial, t)) {
    clear = Math.max(clear, clearOf(run, given.what, t, from, until + given.lasts));
  }
  return clear;
}

/** When work begun at `t` that gives off from one minute until another may begin for what is in the air. */
function clearOf(run: BenchRun, what: number, t: Minutes, from: Minutes, until: Minutes): Minutes {
  const keepApart = run.prepared.apart[what];
  let clear = t;
  if (keepApart === undefined) return clear;
  const { air } = run;
  for (let index = 0; index < air.length; index++) {
    const other = air[index] as InTheAir;
    if (keepApart[other.what] !== true || other.until <= from || other.from >= until) continue;
    clear = Math.max(clear, t + other.until - from);
  }
  return clear;
}

/** What the preparations tried give off, with the minutes of each. */
function preparationsIn(trial: Trial, t: Minutes): { given: Gives; from: Minutes; until: Minutes }[] {
  const found: { given: Gives; from: Minutes; until: Minutes }[] = [];
  let from = t;
  for (let place = 0; place < trial.chosen; place++) {
    const { preparation } = trial.windows[place] as PlanWindow;
    if (preparation === null) continue;
    const until = from + preparation.minutes;
    for (const given of preparation.gives) found.push({ given, from, until });
    from = until + preparation.settles;
  }
  return found;
}

/** Fills the air, and takes away what stands elsewhere and must keep apart from it: it was put away before. */
export function fillAir(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): void {
  run.air = run.air.filter(({ until }) => until > t);
  const { start, setUp, end } = trial;
  for (const { what, fromSetUp, lasts } of task.prepared.gives) {
    give(run, task, what, fromSetUp ? start - setUp : start, end + lasts);
  }
  if (trial.preparation === 0) return;
  for (const { given, from, until } of preparationsIn(trial, t))
    give(run, task, given.what, from, until + given.lasts);
}

function give(run: BenchRun, task: TaskRun, what: number, from: Minutes, until: Minutes): void {
  const keepApart = run.prepared.apart[what];
  if (keepApart === undefined) return;
  run.air.push({ what, from, until });
  for (const station of run.stations) {
    const { standing } = station;
    if (standing === null || standing === "any" || station === task.station) continue;
    const { gives } = at(run.prepared.problem.setUps, standing.setUp);
    if (gives.some((other) => keepApart[other])) station.standing = null;
  }
}

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { type BenchRun, beginRun, enterSession, type Leave } from "./bench-run.ts";
import { chooseTask, emptyChoice } from "./choose-task.ts";
import { placeTask } from "./place-task.ts";
import type { Plan } from "./plan.ts";
import type { Prepared } from "./prepare-dispatch.ts";
import { emptyTrial } from "./try-task.ts";

/**
 * A plan at once, by a priority rule: the bench is played forward (parallel schedule generation), and whenever a pair
 * of hands is free the best task that can begin is begun. All constraints of the problem hold; a window missed brings
 * its preparation, the last one a mend. What cannot be placed is named. The same problem gives the same plan.
 *
 * It looks no further ahead than a session: it is the plan there always is, not the best one.
 *
 * @param leave tasks to be left until a minute
 */
export function dispatch(prepared: Prepared, leave: Leave | null = null): Plan {
  const run = beginRun(prepared, leave);
  play(run, () => false);
  return planOf(run);
}

/** The beginning of the same plan, no further than until each of these tasks has been begun: for their order alone. */
export function dispatchUntilBegun(prepared: Prepared, tasks: readonly number[]): Plan {
  const run = beginRun(prepared, null);
  const toBegin = new Set(tasks);
  let seen = 0;
  play(run, () => {
    for (; seen < run.visits.length; seen++) toBegin.delete(at(run.visits, seen).task);
    return toBegin.size === 0;
  });
  return planOf(run);
}

/** The beginning of the same plan: the first bench session in which anything is worked. */
export function dispatchSession(prepared: Prepared): Plan {
  const run = beginRun(prepared, null);
  play(run, () => run.session > 0 && run.visits.length > 0);
  return planOf(run);
}

function planOf(run: BenchRun): Plan {
  return {
    visits: run.visits.toSorted((a, b) => a.start - b.start || a.task - b.task),
    unplaced: run.tasks.filter(({ end }) => end === Number.POSITIVE_INFINITY).map(({ index }) => index),
    finish: run.pieces.map(({ finish }) => finish),
  };
}

/** When the first of these pieces would be finished; null: not within the horizon. Plays no further than that. */
export function firstFinish(prepared: Prepared, leave: Leave, pieces: readonly number[]): Minutes | null {
  const run = beginRun(prepared, leave);
  const watched = pieces.map((piece) => at(run.pieces, piece));
  play(run, () => watched.some(({ finish }) => finish !== null));
  const finishes = watched.map(({ finish }) => finish ?? Number.POSITIVE_INFINITY);
  const first = Math.min(...finishes);
  return first === Number.POSITIVE_INFINITY ? null : first;
}

/** Plays the bench forward until nothing more can be placed, or until told to stop. */
function play(run: BenchRun, stop: () => boolean): void {
  goOnWithWorkInHand(run);
  const choice = emptyChoice(run);
  let t = 0;
  while (run.candidates.length > 0 && !stop()) {
    t = enterSession(run, Math.max(t, Math.min(...run.hands)));
    if (t >= run.prepared.problem.horizon) return;
    chooseTask(run, t, choice);
    if (choice.task === null) t = Math.max(t, choice.next);
    else placeTask(run, choice.task, t, choice.trial);
  }
}

/** What is in hand goes on at once whatever the hours, one after the other for each pair of hands. */
function goOnWithWorkInHand(run: BenchRun): void {
  for (const task of run.tasks) {
    if (!task.task.running) continue;
    const start = Math.max(Math.min(...run.hands), task.piece.free);
    const end = start + task.rest;
    placeTask(run, task, start, { ...emptyTrial(), start, end });
  }
}

import type { Minutes } from "../../time/instant.ts";
import { shutAfter } from "../lag.ts";
import { findBegin, sharedTooEarly, usableWindows } from "./begin-task.ts";
import { type Bench, type BenchTask, DECIDED } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { giveUpTask, placeTask } from "./place-task.ts";

/**
 * Plays a task as early as can be, after all that was played before.
 *
 * @param isLaidOut findBegin has just laid it out on the bench as it is now
 * @returns a task before it that has to end later for it, and has been lifted; null: it is played, or given up
 */
export function playTask(bench: Bench, task: BenchTask, isLaidOut: boolean): BenchTask | null {
  // To set a length is a call into the engine, even where there is nothing to clear.
  if (task.parts.length > 0) task.parts.length = 0;
  if (isLaidOut || findBegin(bench, task, bench.clock)) {
    const early = task.decided === DECIDED.shares ? shareSetUp(bench, task) : null;
    if (early !== null) return early;
    placeTask(bench, task);
    if (task.left > 0) playParts(bench, task);
    return null;
  }
  const { missed, missedBy } = bench;
  if (missed !== null && lift(bench, missed.on, missed.on.end + missedBy)) return missed.on;
  giveUpTask(bench, task);
  return null;
}

/** The rest of a task that was split is done first thing when the bench opens again. */
function playParts(bench: Bench, task: BenchTask): void {
  const { begin, setUpMinutes, start } = task;
  const windows = [...task.windows];
  task.parts.push(setUpMinutes, start, task.end);
  task.split = true;
  while (task.left > 0) {
    task.rest = task.left;
    if (!findBegin(bench, task, bench.clock)) {
      giveUpTask(bench, task);
      break;
    }
    placeTask(bench, task);
    task.parts.push(task.setUpMinutes, task.start, task.end);
  }
  task.split = false;
  task.rest = task.minutes;
  task.windows.push(...windows);
  if (task.end < NEVER) Object.assign(task, { begin, setUpMinutes, start });
}

/** A melt or cup that is to be shared must be kept for the task: its use before has to end later. */
function shareSetUp(bench: Bench, task: BenchTask): BenchTask | null {
  const { station, setUp } = task;
  if (station === null || setUp === null || task.setUpMinutes === 0) return null;
  const early = sharedTooEarly(station, task);
  const before = setUp.way === "heat" ? station.user : station.maker;
  if (early <= 0 || before === null) return null;
  return lift(bench, before, before.end + early) ? before : null;
}

/** @returns false when the task cannot end later: it is in hand or done, or no bench hours are left */
function lift({ horizon }: Bench, task: BenchTask, end: Minutes): boolean {
  const isFact = task.running || task.ended !== null;
  if (isFact || end <= task.lifted || end > horizon) return false;
  task.lifted = end;
  return true;
}

/**
 * Lowers a lift that asks for more than the windows after the task need, now that these are played.
 *
 * @returns whether the task could end sooner
 */
export function relaxLift(task: BenchTask): boolean {
  if (task.lifted === 0) return false;
  let slack = NEVER;
  if (task.end <= task.lifted) {
    for (const wait of task.awaited) {
      const shuts = usableWindows(wait).at(-1)?.shuts ?? null;
      slack = Math.min(slack, shutAfter(shuts, task.end) - wait.task.start);
    }
  }
  if (slack <= 0) return false;
  task.lifted = Math.max(0, task.lifted - slack);
  return task.end > task.lifted;
}

import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Bench, BenchPiece, BenchSlot, BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Style } from "./style.ts";

/** A session that goes on for longer counts as so long. */
const LONG: Minutes = 480;

/** Whether a task, once done, keeps another out of the room. */
export function keepsOut({ keepsOut: table, airs }: Bench, task: BenchTask, other: BenchTask): boolean {
  return (table[task.airKind * airs + other.airKind] as number) > 0;
}

/** How many pieces are begun and have tasks left. */
export function inWork({ pieces }: Bench): number {
  let count = 0;
  for (let index = 0; index < pieces.length; index++) {
    const { begun, left } = pieces[index] as BenchPiece;
    if (begun && left > 0) count++;
  }
  return count;
}

/** Before this minute its first windows are not open. */
export function earliest({ waits, release }: BenchTask): Minutes {
  let from = release;
  for (let index = 0; index < waits.length; index++) {
    const { on, windows } = waits[index] as BenchWait;
    const window = windows[0];
    if (window !== undefined && window.lead === 0) from = Math.max(from, openingAfter(window.opens, on.end));
  }
  return from;
}

/** When it must be begun for its last windows, set-up included. */
export function latestBegin({ waits, setUp }: BenchTask): Minutes {
  let latest = NEVER;
  for (let index = 0; index < waits.length; index++) {
    const { on, windows } = waits[index] as BenchWait;
    const window = windows[windows.length - 1];
    if (window !== undefined) {
      latest = Math.min(latest, shutAfter(window.shuts, on.end) - (setUp?.minutes ?? 0));
    }
  }
  return latest;
}

/** The first minute in bench hours at which a pair of hands is free. */
export function openMinute({ calendar, hands, clock }: Bench): Minutes {
  let free = hands[0] as Minutes;
  for (let index = 1; index < hands.length; index++) free = Math.min(free, hands[index] as Minutes);
  const from = Math.max(free, clock);
  return Math.max(from, calendar.opening(calendar.at(from)));
}

/** Before this minute the air is not clear for a task of a need, or for its set-up, as the air is, or would be. */
export function clearFor({ needs }: Bench, need: number, clearAt: readonly Minutes[]): Minutes {
  const { fills, fillsLater, setUp } = needs[need] as BenchTask;
  const lead = setUp?.minutes ?? 0;
  let clear = 0;
  for (let index = 0; index < fillsLater.length; index++) {
    clear = Math.max(clear, (clearAt[fillsLater[index] as number] as Minutes) - lead);
  }
  for (let index = 0; index < fills.length; index++) {
    clear = Math.max(clear, clearAt[fills[index] as number] as Minutes);
  }
  return clear;
}

/** Whether another can still be begun by a minute once a task is done, as far as air and hooks tell. */
export function letsMeet(bench: Bench, task: BenchTask, other: BenchTask, latest: Minutes): boolean {
  const kept = bench.keepsOut[task.airKind * bench.airs + other.airKind] as Minutes;
  return (kept === 0 || task.end + kept <= latest) && !takesLastHook(task, other, latest);
}

/** Whether a task would hang on the last hook that is free by the time another must hang there. */
function takesLastHook({ hook, end }: BenchTask, due: BenchTask, latest: Minutes): boolean {
  if (hook === null || due.hook === null || hook.place !== due.hook.place) return false;
  const by = latest + due.minutes;
  if (openingAfter(hook.until, end) <= by) return false;
  const { slots } = hook.place;
  let free = 0;
  for (let index = 0; index < slots.length; index++) if ((slots[index] as BenchSlot).until <= by) free++;
  return free < 2;
}

/** A task's rank with what counts against it as it could begin now: setting up, and room and hooks taken from others. */
export function rankAsBegun(
  { calendar }: Bench,
  task: BenchTask,
  ranks: Float64Array,
  { setUpCounts, airCounts, hookCounts }: Style,
): number {
  const { index, setUpMinutes, start, end, holds, hook } = task;
  const counted = (ranks[index] as number) + setUpCounts * setUpMinutes;
  if (airCounts + hookCounts === 0) return counted;
  const left = Math.min(LONG, calendar.closing(calendar.at(start)) - end);
  const hooked = hook === null ? 0 : openingAfter(hook.until, end) - end;
  return counted + airCounts * Math.min(left, holds) + hookCounts * Math.min(left, hooked);
}

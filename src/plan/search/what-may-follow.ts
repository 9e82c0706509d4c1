import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/** Whether a task, once done, keeps another out of the room. */
export function keepsOut({ keepsOut: table, airs }: Bench, task: BenchTask, other: BenchTask): boolean {
  return (table[task.airKind * airs + other.airKind] as number) > 0;
}

/** How many pieces are begun and have tasks left. */
export function inWork({ pieces }: Bench): number {
  let count = 0;
  for (const { begun, left } of pieces) if (begun && left > 0) count++;
  return count;
}

/** Before this minute its first windows are not open. */
export function earliest({ waits, release }: BenchTask): Minutes {
  let from = release;
  for (const { on, windows } of waits) {
    const window = windows[0];
    if (window !== undefined && window.lead === 0) from = Math.max(from, openingAfter(window.opens, on.end));
  }
  return from;
}

/** When it must be begun for its last windows, set-up included. */
export function latestBegin({ waits, setUp }: BenchTask): Minutes {
  let latest = NEVER;
  for (const { on, windows } of waits) {
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

/** Before this minute the air is not clear for a task, or for its set-up. */
export function clearFor({ clearAt, needs }: Bench, need: number): Minutes {
  const { fills, fillsLater, setUp } = needs[need] as BenchTask;
  const lead = setUp?.minutes ?? 0;
  let clear = 0;
  for (const what of fillsLater) clear = Math.max(clear, (clearAt[what] as Minutes) - lead);
  for (const what of fills) clear = Math.max(clear, clearAt[what] as Minutes);
  return clear;
}

/** Whether a task would hang on the last hook that is free by the time another must hang there. */
export function takesLastHook({ hook, end }: BenchTask, due: BenchTask, latest: Minutes): boolean {
  if (hook === null || due.hook === null || hook.place !== due.hook.place) return false;
  const by = latest + due.minutes;
  if (openingAfter(hook.until, end) <= by) return false;
  let free = 0;
  for (const { until } of hook.place.slots) if (until <= by) free++;
  return free < 2;
}

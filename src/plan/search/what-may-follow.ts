import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/** Whether a task, once done, keeps another out of the room. */
export function keepsOut({ apart }: Bench, task: BenchTask, other: BenchTask): boolean {
  for (const { what, lasts } of task.gives) {
    if (lasts === 0) continue;
    const row = apart[what];
    for (const given of other.gives) if (row?.includes(given.what)) return true;
  }
  return false;
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

import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import { LOOK, SHORTEST_PART } from "../problem.ts";
import type { Bench, BenchSlot, BenchTask, BenchWait, BenchWindow } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { unfitInTheWay } from "./unfit-air.ts";

/** By how much the work must move for looks, air, hooks and the windows after it; 0: nothing is in the way. */
export function inTheWay(bench: Bench, task: BenchTask): Minutes {
  return (
    (task.unfit.length > 0 ? unfitInTheWay(task) : 0) ||
    (bench.looksAsked > 0 ? lookInTheWay(bench, task) : 0) ||
    (task.gives.length > 0 || task.begin < task.start ? airInTheWay(bench, task) : 0) ||
    (task.hook !== null ? hookInTheWay(task) : 0) ||
    (task.strict.length > 0 ? windowAheadInTheWay(bench, task) : 0)
  );
}

/** Looks at coats laid before need a free pair of hands at their minute. */
function lookInTheWay(bench: Bench, { begin, end }: BenchTask): Minutes {
  const { looks, hands, looksBefore } = bench;
  const old = begin - bench.longestLook;
  let move = 0;
  for (let index = bench.looksAsked - 1; index >= 0; index--) {
    const look = looks[index] as Minutes;
    // Those asked for in the play came one after another: the ones before this are past, too.
    if (look < old && index >= looksBefore) index = looksBefore;
    if (look >= end || look + LOOK <= begin) continue;
    let busy = 1;
    for (let hand = 0; hand < hands.length; hand++) if ((hands[hand] as Minutes) > look) busy++;
    if (busy >= hands.length) move = Math.max(move, look + LOOK - begin);
  }
  return move;
}

/** Nothing may be in the room that must keep apart from what the task, its set-up and its preparation give off. */
function airInTheWay(bench: Bench, task: BenchTask): Minutes {
  let move = 0;
  const { clearAt } = bench;
  const { begin, start, setUpMinutes: setUp, fills, fillsLater } = task;
  for (let index = 0; index < fills.length; index++) {
    move = Math.max(move, (clearAt[fills[index] as number] as Minutes) - start + setUp);
  }
  for (let index = 0; index < fillsLater.length; index++) {
    move = Math.max(move, (clearAt[fillsLater[index] as number] as Minutes) - start);
  }
  if (start - setUp === begin) return move;
  let from = begin;
  for (const { preparation } of task.windows) {
    if (preparation === null) continue;
    for (const { what } of preparation.gives) move = Math.max(move, (clearAt[what] ?? 0) - from);
    from += preparation.minutes + preparation.settles;
  }
  return move;
}

/** The hook it will hang on must be free by its end; its own is free once it is in hand. */
function hookInTheWay({ hook, left, end, piece }: BenchTask): Minutes {
  if (hook === null || left > 0 || openingAfter(hook.until, end) <= end) return 0;
  let taken = 0;
  let next = NEVER;
  const { slots, hooks } = hook.place;
  for (let index = 0; index < slots.length; index++) {
    const slot = slots[index] as BenchSlot;
    if (slot === piece.hook || slot.until <= end) continue;
    taken++;
    next = Math.min(next, slot.until);
  }
  return taken < hooks ? 0 : next - end;
}

/** A coat whose last window shuts for good is not laid when the bench is shut for all of that window. */
function windowAheadInTheWay({ calendar }: Bench, task: BenchTask): Minutes {
  if (task.left > 0) return 0;
  let move = 0;
  const { strict } = task;
  for (let place = 0; place < strict.length; place++) {
    const { windows, task: next } = strict[place] as BenchWait;
    let least = NEVER;
    for (let index = 0; index < windows.length; index++) {
      const window = windows[index] as BenchWindow;
      const lead = window.lead + setUpAhead(next);
      const need =
        (next.mayStop ? Math.min(next.minutes, SHORTEST_PART) : next.minutes) + (next.setUp?.putAway ?? 0);
      const meets = calendar.meeting(openingAfter(window.opens, task.end), lead, need);
      if (meets >= NEVER) continue;
      least = Math.min(least, Math.max(0, meets - shutAfter(window.shuts, task.end)));
    }
    move = Math.max(move, least);
  }
  return move;
}

/** What was loaded may stand already; a melt or a cup does not stand overnight. */
function setUpAhead({ setUp }: BenchTask): Minutes {
  return setUp === null || setUp.way === "load" ? 0 : setUp.minutes;
}

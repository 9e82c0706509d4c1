import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import { SHORTEST_PART } from "../problem.ts";
import {
  type Bench,
  type BenchPiece,
  type BenchStation,
  type BenchTask,
  type BenchWait,
  type BenchWindow,
  DECIDED,
} from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { inTheWay } from "./in-the-way.ts";

/**
 * Finds the first minute from `from` on at which a task can begin with all that stands, hangs and dries as the play
 * has left it, and writes into the task how it would be worked. Each rule that is in the way says by how much the
 * task must move, so the search jumps from one possible moment to the next.
 *
 * @returns false when no minute will do; a wait whose last window had shut is then left in `bench.missed`
 */
export function findBegin(bench: Bench, task: BenchTask, from: Minutes): boolean {
  bench.missed = null;
  if (task.split) task.windows.length = 0;
  else if (!task.plain) chooseFirstWindows(task);
  // `hands` is the least begin, `opens` the least start of hands-on: a set-up may come before the window opens.
  let hands = Math.max(from, task.piece.free, task.release, freeHand(bench));
  if (task.station !== null) hands = Math.max(hands, task.station.busyUntil);
  let opens = task.lifted > 0 && !task.split ? task.lifted - task.rest : 0;
  for (;;) {
    const lead = task.plain ? 0 : windowsLead(task);
    opens = Math.max(opens, windowsOpen(task));
    if (lead > 0) hands = Math.max(hands, preparationsOpen(task));
    if (bench.mostOut !== null) hands = Math.max(hands, roomUnderLimit(bench, task, bench.mostOut, hands));
    if (hands >= NEVER || opens >= NEVER || !layOut(bench, task, hands, opens, lead)) return false;
    if (task.shuts && isLate(bench, task)) {
      if (bench.missed !== null) return false;
      continue;
    }
    const move = inTheWay(bench, task);
    if (move === 0) return true;
    if (move >= NEVER) return false;
    // Work that stands still in the way of something moves as a whole.
    opens = task.start + move;
    hands = Math.max(hands, task.begin);
  }
}

function freeHand({ hands, clock }: Bench): Minutes {
  let first = hands[0] as Minutes;
  for (let index = 1; index < hands.length; index++) first = Math.min(first, hands[index] as Minutes);
  return Math.max(first, clock);
}

function chooseFirstWindows({ waits, windows }: BenchTask): void {
  for (let index = 0; index < waits.length; index++) {
    const first = waits[index]?.windows[0];
    if (first !== undefined) windows[index] = first;
  }
}

/** Minutes of preparation, dust settling included, that the windows chosen ask for. */
function windowsLead({ windows }: BenchTask): Minutes {
  let lead = 0;
  for (let index = 0; index < windows.length; index++) lead += (windows[index] as BenchWindow).lead;
  return lead;
}

/** When all windows chosen that ask for nothing are open. */
function windowsOpen({ waits, windows }: BenchTask): Minutes {
  let opens = 0;
  for (let index = 0; index < windows.length; index++) {
    const window = windows[index];
    const end = waits[index]?.on.end ?? NEVER;
    if (end >= NEVER) return NEVER;
    if (window !== undefined && window.lead === 0) opens = Math.max(opens, openingAfter(window.opens, end));
  }
  return opens;
}

/** A preparation must not begin before its window either. */
function preparationsOpen({ waits, windows }: BenchTask): Minutes {
  let opens = 0;
  for (let index = 0; index < waits.length; index++) {
    const window = windows[index];
    if (window !== undefined && window.lead > 0) {
      opens = Math.max(opens, openingAfter(window.opens, waits[index]?.on.end ?? NEVER));
    }
  }
  return opens;
}

/** A piece under the limit is begun only while fewer than the limit are out. */
function roomUnderLimit({ pieces }: Bench, { piece }: BenchTask, mostOut: number, t: Minutes): Minutes {
  if (piece.begun || !piece.underLimit) return t;
  for (let from = t; ; ) {
    let out = 0;
    let next = NEVER;
    for (let index = 0; index < pieces.length; index++) {
      const { begun, finish } = pieces[index] as BenchPiece;
      if (!begun || finish <= from) continue;
      out++;
      next = Math.min(next, finish);
    }
    if (out < mostOut || next >= NEVER) return out < mostOut ? from : NEVER;
    from = next;
  }
}

/** Finds bench time: preparation, set-up and hands-on in one session, with looks and putting away after them. */
function layOut(bench: Bench, task: BenchTask, hands: Minutes, opens: Minutes, lead: Minutes): boolean {
  const { calendar, horizon } = bench;
  const minutes = task.rest;
  for (let session = calendar.at(Math.max(hands, opens)); ; session++) {
    const from = Math.max(hands, calendar.opening(session));
    if (from >= horizon) return false;
    const setUp = setUpMinutes(task, from + lead, opens, session);
    const start = Math.max(from + lead + setUp, opens, setUp === 0 ? readyAt(task) : 0);
    const closes = calendar.closing(session);
    const shuts = bench.putsAway ? closes - putAwayMinutes(bench, task, session) : closes;
    task.left = 0;
    if (start + minutes > shuts || start + minutes + task.watched > closes) {
      const part = Math.min(shuts - start, minutes - SHORTEST_PART);
      if (!task.mayStop || part < SHORTEST_PART) continue;
      task.left = minutes - part;
    }
    task.setUpMinutes = setUp;
    task.start = start;
    task.begin = start - setUp - lead;
    task.end = start + minutes - task.left;
    return true;
  }
}

/** Minutes of setting up, if hands-on could begin at `from` and the windows are open at `opens`. */
function setUpMinutes(
  { setUp, station, rest, decided }: BenchTask,
  from: Minutes,
  opens: Minutes,
  session: number,
): Minutes {
  if (setUp === null || station === null || station.any) return 0;
  if (station.standing !== setUp || decided === DECIDED.fresh) return setUp.minutes;
  if (setUp.putAway > 0 && station.session !== session) return setUp.minutes;
  if (setUp.way === "load") return 0;
  const start = Math.max(from, opens, station.ready);
  const good =
    setUp.way === "heat"
      ? start <= station.lastUsed + setUp.keeps
      : station.served < setUp.serves && start + rest <= station.ready + setUp.keeps;
  return good ? 0 : setUp.minutes;
}

function readyAt({ setUp, station }: BenchTask): Minutes {
  return setUp === null || station === null || station.standing !== setUp ? 0 : station.ready;
}

/** What must be put away before the session shuts, once the task was worked in it. */
function putAwayMinutes({ stations }: Bench, { station, setUp }: BenchTask, session: number): Minutes {
  let sum = 0;
  for (let index = 0; index < stations.length; index++) {
    const each = stations[index] as BenchStation;
    const owes = each.session === session ? each.owes : 0;
    sum += each === station ? Math.max(owes, setUp?.putAway ?? 0) : owes;
  }
  return sum;
}

/**
 * Goes on to later windows where those chosen have shut at the start found, and notes a wait that has none left. A
 * later window may bring preparation; windows are only ever given up for later ones, so this ends.
 */
function isLate(bench: Bench, task: BenchTask): boolean {
  const { waits, windows, start } = task;
  let late = false;
  for (let index = 0; index < windows.length; index++) {
    const wait = waits[index];
    const window = windows[index];
    if (wait === undefined || window === undefined) continue;
    const { end } = wait.on;
    if (start <= shutAfter(window.shuts, end)) continue;
    late = true;
    const open = laterWindow(wait, window, start);
    if (open === null) {
      bench.missed = wait;
      bench.missedBy = start - shutAfter(usableWindows(wait).at(-1)?.shuts ?? window.shuts, end);
      return true;
    }
    windows[index] = open;
  }
  return late;
}

/** The first window after one that has not shut at a start; null: all have. */
function laterWindow(wait: BenchWait, window: BenchWindow, start: Minutes): BenchWindow | null {
  const { windows, on } = wait;
  const usable = usableWindows(wait);
  for (let index = windows.indexOf(window) + 1; index < windows.length; index++) {
    const later = windows[index] as BenchWindow;
    if (start <= shutAfter(later.shuts, on.end) && usable.includes(later)) return later;
  }
  return null;
}

/** The windows of a wait that may be used: of a firm task those that ask for nothing, if there are any. */
export function usableWindows({ task, windows }: BenchWait): readonly BenchWindow[] {
  if (task.decided !== DECIDED.firm) return windows;
  const free = windows.filter(({ lead }) => lead === 0);
  return free.length > 0 ? free : windows;
}

/** What stands at a station for a task that shares it is good no more: by how many minutes its use before was too early. */
export function sharedTooEarly(station: BenchStation, task: BenchTask): Minutes {
  const { setUp } = task;
  if (setUp === null || setUp.way === "load" || station.standing !== setUp) return 0;
  return setUp.way === "heat"
    ? task.start - task.setUpMinutes - station.lastUsed - setUp.keeps
    : task.end - task.setUpMinutes - station.ready - setUp.keeps;
}

import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import type { Gives } from "../problem.ts";
import type { Bench, BenchPiece, BenchSlot, BenchStation, BenchTask, BenchWindow } from "./bench.ts";
import { NEVER } from "./calendar.ts";

const NONE: readonly number[] = [];

/** Works a task as findBegin has laid it out: hands, station, air and hook are taken, and what the plan costs grows. */
export function placeTask(bench: Bench, task: BenchTask): void {
  const { piece, begin, end } = task;
  bench.clock = begin;
  takeHands(bench, begin, end);
  occupyStation(bench, task);
  fillAir(bench, task, bench.clearAt);
  if (bench.setUpsGive) putAwayApart(bench, task);
  piece.begun = true;
  piece.free = end;
  if (piece.hook !== null) {
    piece.hook.until = Math.min(piece.hook.until, begin);
    piece.hook.piece = null;
    piece.hook = null;
  }
  const extra = extraOf(bench, task);
  bench.extra += extra;
  bench.cost += extra;
  if (task.left === 0) endTask(bench, task);
}

/** Of the hands that are free by then the ones that were taken last. */
function takeHands({ hands }: Bench, begin: Minutes, end: Minutes): void {
  let taken = 0;
  for (let index = 1; index < hands.length; index++) {
    const free = hands[index] as Minutes;
    const best = hands[taken] as Minutes;
    if (free <= begin ? best > begin || free > best : best > begin && free < best) taken = index;
  }
  hands[taken] = end;
}

function occupyStation(bench: Bench, task: BenchTask): void {
  const { station, setUp, start, end } = task;
  if (station === null) return;
  station.busyUntil = end;
  if (setUp === null) return;
  const session = bench.calendar.at(start);
  const kept = task.setUpMinutes === 0 && !station.any && station.standing === setUp;
  station.owes = Math.max(station.session === session ? station.owes : 0, setUp.putAway);
  station.session = session;
  station.any = false;
  station.standing = setUp;
  station.lastUsed = end;
  station.user = task;
  station.served = kept ? station.served + 1 : 1;
  if (kept) return;
  station.ready = start;
  station.maker = task;
}

/**
 * Fills the air by what a task gives off, as it has been laid out.
 *
 * @param clearAt by emission: until when something is in the room that must keep apart from it
 */
export function fillAir(bench: Bench, task: BenchTask, clearAt: Minutes[]): void {
  const { gives } = task;
  for (let index = 0; index < gives.length; index++) {
    const { what, lasts } = gives[index] as Gives;
    giveOff(bench, what, task.end + lasts, clearAt);
  }
  if (task.start - task.setUpMinutes === task.begin) return;
  const { windows } = task;
  let end = task.begin;
  for (let index = 0; index < windows.length; index++) {
    const { preparation } = windows[index] as BenchWindow;
    if (preparation === null) continue;
    end += preparation.minutes;
    for (const { what, lasts } of preparation.gives) giveOff(bench, what, end + lasts, clearAt);
    end += preparation.settles;
  }
}

function giveOff({ apart }: Bench, what: number, until: Minutes, clearAt: Minutes[]): void {
  const others = apart[what] ?? NONE;
  for (let index = 0; index < others.length; index++) {
    const other = others[index] as number;
    if ((clearAt[other] as Minutes) < until) clearAt[other] = until;
  }
}

/** Takes away what stands elsewhere and must keep apart from what a task gives off: it was put away before. */
function putAwayApart({ apart, stations }: Bench, task: BenchTask): void {
  for (let index = 0; index < stations.length; index++) {
    const station = stations[index] as BenchStation;
    if (station === task.station || station.standing === null) continue;
    const { gives } = station.standing;
    if (gives.length > 0 && givesApart(apart, task, gives)) station.standing = null;
  }
}

function givesApart(apart: Bench["apart"], { gives, windows }: BenchTask, stood: readonly number[]): boolean {
  const isApart = ({ what }: Gives): boolean => haveInCommon(stood, apart[what] ?? NONE);
  return gives.some(isApart) || windows.some(({ preparation }) => preparation?.gives.some(isApart) ?? false);
}

function haveInCommon(some: readonly number[], others: readonly number[]): boolean {
  for (let index = 0; index < some.length; index++) {
    if (others.includes(some[index] as number)) return true;
  }
  return false;
}

/** What the preparations cost. */
/** What a task adds to the plan's set-ups and amends, as it has been laid out. */
export function extraOf(bench: Bench, task: BenchTask): number {
  return bench.prices.setUp * task.setUpMinutes + amends(bench, task);
}

function amends({ prices }: Bench, { begin, start, windows }: BenchTask): number {
  let minutes = 0;
  if (begin < start) for (const { preparation } of windows) minutes += preparation?.minutes ?? 0;
  return prices.amends * minutes;
}

function endTask(bench: Bench, task: BenchTask): void {
  const { piece, end, hook, looks } = task;
  for (let index = 0; index < looks.length; index++) {
    bench.looks[bench.looksAsked++] = end + (looks[index] as Minutes);
  }
  if (hook !== null) {
    const until = Math.min(NEVER, openingAfter(hook.until, end));
    if (until > end) hang(piece, hook, end, until);
  }
  piece.left--;
  if (piece.left === 0) piece.finish = piece.free + piece.cure;
  const least = piece.left === 0 ? piece.finish : leastFinish(bench, task);
  if (least > piece.leastFinish) raiseLeastFinish(bench, piece, least);
}

function hang(
  piece: BenchPiece,
  { place, stays }: NonNullable<BenchTask["hook"]>,
  end: Minutes,
  until: Minutes,
): void {
  // Of the hooks that are free by then any one; by how long each is taken they are all alike.
  const { slots } = place;
  for (let index = 0; index < slots.length; index++) {
    const slot = slots[index] as BenchSlot;
    if (slot.until > end) continue;
    slot.until = until;
    // Whoever hung there before has nothing to leave any more.
    if (slot.piece !== null) slot.piece.hook = null;
    slot.piece = stays ? null : piece;
    if (!stays) piece.hook = slot;
    return;
  }
}

/** When the piece is finished at the earliest, now that the task is done: waits, work and closed hours alone. */
function leastFinish({ calendar, horizon }: Bench, task: BenchTask): Minutes {
  const { end, tail, leastFinish: bySession } = task;
  // What is in hand may end while the bench is shut, before the session that it is counted to.
  const later = task.running ? 0 : (bySession[calendar.at(end - 1)] ?? NEVER);
  return Math.min(horizon, Math.max(end + tail, later));
}

/** What a piece costs that is finished then. */
export function pieceCost({ prices }: Bench, { due, release, weight }: BenchPiece, finish: Minutes): number {
  return prices.late * weight * Math.max(0, finish - due) + prices.flow * Math.max(0, finish - release);
}

function raiseLeastFinish(bench: Bench, piece: BenchPiece, least: Minutes): void {
  bench.cost += pieceCost(bench, piece, least) - pieceCost(bench, piece, piece.leastFinish);
  piece.leastFinish = least;
}

/** A task that no minute will do for: it has no end, and its piece counts as finished at the horizon. */
export function giveUpTask(bench: Bench, task: BenchTask): void {
  task.begin = NEVER;
  task.setUpMinutes = 0;
  task.start = NEVER;
  task.end = NEVER;
  const { piece } = task;
  if (piece.leastFinish < bench.horizon) raiseLeastFinish(bench, piece, bench.horizon);
}

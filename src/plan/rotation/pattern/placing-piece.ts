import type { Minutes } from "../../../time/instant.ts";
import { LOOK } from "../../problem.ts";
import type { ApartTables } from "./apart-tables.ts";
import { type FreeMinutes, handsFree, NEVER } from "./free-minutes.ts";
import { mod } from "./mod.ts";
import type { Occupied } from "./occupied.ts";
import type { Placed } from "./placed.ts";
import type { Route } from "./route.ts";
import type { Use } from "./station-uses.ts";

const DAY: Minutes = 1_440;

interface Put extends Use {
  readonly start: Minutes;
}

/** One piece that is being put between others, task by task; its own tasks are in its way like theirs. */
export class Placing {
  readonly route: Route;
  readonly period: Minutes;
  readonly #occupied: Occupied;
  readonly #free: FreeMinutes;
  readonly #tables: ApartTables;
  readonly #put: Put[] = [];
  readonly #piece: number;
  /** By station, the minutes of putting away that the session looked at owes. */
  readonly #owes: Int32Array;

  constructor(occupied: Occupied, free: FreeMinutes, tables: ApartTables) {
    this.route = occupied.route;
    this.period = occupied.period;
    this.#occupied = occupied;
    this.#free = free;
    this.#tables = tables;
    this.#piece = occupied.pieces.length;
    this.#owes = new Int32Array(occupied.uses.all.length);
  }

  #headOf(task: number): Minutes {
    const { tasks, setUps } = this.route.circle;
    return setUps[tasks[task]?.setUp ?? -1]?.minutes ?? 0;
  }

  /** Whether a task can start then, with its looks, and whether its set-up is then made for it; null: it cannot. */
  canStart(task: number, start: Minutes): boolean | null {
    const minute = mod(start, this.period);
    if (!this.route.time.isOpen(minute)) return null;
    if (this.#free.setUps[task]?.[this.route.time.slotsBefore[minute] as number] === NEVER) return null;
    const { looks } = this.route;
    for (const look of looks[task] ?? []) {
      const at = minute + look.after;
      if (!this.#isApart(look.task, at, false) || !handsFree(this.#occupied, at, at + LOOK)) return null;
    }
    const made = this.#settle(task, minute);
    if (made === null || !this.#occupied.uses.fitsBefore(task, minute, made)) return null;
    return this.#shutsInTime(task, minute) && this.#hasRoom(task, start) ? made : null;
  }

  put(task: number, start: Minutes, made: boolean): void {
    this.#add(task, start, made);
    for (const look of this.route.looks[task] ?? []) this.#add(look.task, start + look.after, false);
  }

  /** Takes back the task put last, with its looks. */
  takeBack(): void {
    let taken = this.#put.pop();
    while (taken !== undefined) {
      this.#occupied.uses.remove(taken);
      this.#countHands(taken, -1);
      const isLook = this.route.looks.some((own) => own.some(({ task }) => task === taken?.task));
      taken = isLook ? this.#put.pop() : undefined;
    }
  }

  /** Puts a task that is done beside the row as late as it can be. @returns whether it could */
  putLatest(task: number): boolean {
    const start = this.#latestFor(task);
    const made = start === null ? null : this.canStart(task, start);
    if (start === null || made === null) return false;
    this.put(task, start, made);
    return true;
  }

  /** The piece as it was put, and all taken back from the circle; null: it does not keep to its waits. */
  finish(): Placed | null {
    const { tasks, pieces } = this.route.circle;
    const [piece] = pieces;
    const isWhole = this.#put.length === tasks.length;
    // Loops, no functions of their own: V8 would compile these for one kind of list, find another, and begin again for ever.
    const starts = new Array<Minutes>(tasks.length).fill(0);
    const made = new Array<boolean>(tasks.length).fill(false);
    for (const put of this.#put) {
      starts[put.task] = put.start;
      made[put.task] = put.made;
    }
    while (this.#put.length > 0) this.takeBack();
    if (piece === undefined || !isWhole || !holdsLags(this.route, starts)) return null;
    let from = Number.POSITIVE_INFINITY;
    let until = Number.NEGATIVE_INFINITY;
    for (const task of piece.begins) from = Math.min(from, starts[task] as Minutes);
    for (const { task, minutes } of piece.ends) until = Math.max(until, (starts[task] as Minutes) + minutes);
    return { starts, made, from, until };
  }

  #add(task: number, start: Minutes, made: boolean): void {
    const put = { task, start, made, piece: this.#piece, minute: mod(start, this.period) };
    this.#put.push(put);
    this.#occupied.uses.add(put);
    this.#countHands(put, 1);
  }

  #countHands({ task, minute, made }: Put, by: number): void {
    const { hands } = this.#occupied;
    if (hands.length === 0) return;
    const from = minute - (made ? this.#headOf(task) : 0);
    const until = minute + (this.route.circle.tasks[task]?.minutes ?? 0);
    for (let at = from; at < until; at++) (hands[at] as number) += by;
  }

  #startOf(task: number): Minutes | null {
    return this.#put.find((put) => put.task === task)?.start ?? null;
  }

  /** Whether its set-up is made: only where it does not stand; null: neither fits. */
  #settle(task: number, minute: Minutes): boolean | null {
    const { circle } = this.route;
    const { minutes = 0, setUp = null } = circle.tasks[task] ?? {};
    const slot = this.route.time.slotsBefore[minute] as number;
    const stands = setUp === null || this.#occupied.uses.stands(task, minute);
    if (stands && this.#free.hindered[task]?.[slot] === 0 && this.#isApart(task, minute, false)) {
      return handsFree(this.#occupied, minute, minute + minutes) ? false : null;
    }
    if (setUp === null) return null;
    const from = minute - this.#headOf(task);
    const session = this.route.time.sessionAt(minute);
    if (from < (circle.sessions[session]?.opens ?? 0)) return null;
    if (this.#free.hinderedMade[task]?.[slot] === 1 || !this.#isApart(task, minute, true)) return null;
    return handsFree(this.#occupied, from, minute + minutes) ? true : null;
  }

  /** Whether a task is far enough from the others of its piece. */
  #isApart(task: number, minute: Minutes, made: boolean): boolean {
    const { period } = this;
    for (const other of this.#put) {
      const there = made ? this.#tables.made(other.task, task) : this.#tables.standing(other.task, task);
      const back = other.made ? this.#tables.made(task, other.task) : this.#tables.standing(task, other.task);
      if (there < 0 && back < 0) continue;
      const after = mod(minute - other.minute, period);
      if (after < there || period - after < back || after === 0) return false;
    }
    return true;
  }

  /** Whether all work of its session ends early enough for all putting away. */
  #shutsInTime(task: number, minute: Minutes): boolean {
    const { owed, lastEnd } = this.#occupied;
    const { circle, lasts, time } = this.route;
    const session = time.sessionAt(minute);
    const closes = circle.sessions[session]?.closes ?? 0;
    let last = Math.max(lastEnd[session] as number, minute + (lasts[task] as number));
    const owes = this.#owes;
    owes.set(owed[session] as Minutes[]);
    this.#owe(task);
    for (const put of this.#put) {
      if (time.sessionAt(put.minute) !== session) continue;
      last = Math.max(last, put.minute + (circle.tasks[put.task]?.minutes ?? 0));
      this.#owe(put.task);
    }
    for (const minutes of owes) last += minutes;
    return last <= closes;
  }

  #owe(task: number): void {
    const { circle } = this.route;
    const setUp = circle.setUps[circle.tasks[task]?.setUp ?? -1];
    if (setUp === undefined) return;
    const { station, putAway } = setUp;
    this.#owes[station] = Math.max(this.#owes[station] as number, putAway);
  }

  /** Whether what is held until a task starts, and what it holds itself, has room; its own other holds counted. */
  #hasRoom(task: number, start: Minutes): boolean {
    const { holds, room } = this.route.circle;
    if (room.length === 0) return true;
    const known = (of: number): Minutes | null => (of === task ? start : this.#startOf(of));
    const spans = holds.flatMap((hold) => {
      const begun = known(hold.task);
      if (begun === null) return [];
      const from = begun + hold.after;
      const freed = hold.freedBy === null ? null : known(hold.freedBy);
      // Freed by a task that is not put yet: at least its beginning must have room.
      const until =
        hold.freedBy === null || freed !== null ? Math.min(from + hold.minutes, freed ?? Infinity) : from + 1;
      return [
        {
          of: hold.of,
          from,
          until: Math.max(from, until),
          fresh: hold.task === task || hold.freedBy === task,
        },
      ];
    });
    return spans.every((span) => !span.fresh || this.#holdFits(span, spans));
  }

  #holdFits(
    { of, from, until }: { of: number; from: Minutes; until: Minutes },
    own: readonly { readonly of: number; readonly from: Minutes; readonly until: Minutes }[],
  ): boolean {
    const { period } = this;
    const most = this.route.circle.room[of] ?? 0;
    const held = this.#occupied.held[of] as Int16Array;
    const alike = own.filter((other) => other.of === of);
    for (let at = from; at < until; at++) {
      const count = alike.reduce(
        (sum, other) =>
          sum + Math.floor((at - other.from) / period) - Math.floor((at - other.until) / period),
        0,
      );
      if ((held[mod(at, period)] as number) + count > most) return false;
    }
    return true;
  }

  /** The last minute before what waits for it at which a task can start, at most a day before the row is begun. */
  #latestFor(task: number): Minutes | null {
    const { circle } = this.route;
    let from = (this.#put[0]?.start ?? 0) - DAY;
    let until = Math.max(...this.#put.map(({ start }) => start));
    for (const { from: before, to, least, most } of circle.lags) {
      const first = to === task ? this.#startOf(before) : null;
      if (first !== null) {
        from = Math.max(from, first + least);
        if (most !== null) until = Math.min(until, first + most);
      }
      const next = before === task ? this.#startOf(to) : null;
      if (next !== null) {
        until = Math.min(until, next - least);
        if (most !== null) from = Math.max(from, next - most);
      }
    }
    for (let start = until; start >= from; start--) if (this.canStart(task, start) !== null) return start;
    return null;
  }
}

function holdsLags({ circle }: Route, starts: readonly Minutes[]): boolean {
  return circle.lags.every(({ from, to, least, most, gaps = [] }) => {
    const waited = (starts[to] as number) - (starts[from] as number);
    if (!(waited >= least) || (most !== null && waited > most)) return false;
    return gaps.every(({ shuts, opens }) => waited <= shuts || waited >= opens);
  });
}

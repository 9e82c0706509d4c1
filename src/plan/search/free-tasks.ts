import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import { findBegin } from "./begin-task.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Style } from "./style.ts";
import {
  clearFor,
  earliest,
  inWork,
  keepsOut,
  latestBegin,
  openMinute,
  takesLastHook,
} from "./what-may-follow.ts";

/** A session that goes on for longer counts as so long. */
const LONG: Minutes = 480;

/** Not looked at yet. */
const UNSEEN = -1;

/**
 * The tasks that could go next, by rank, and the choice among them: of those that can begin before any could be done,
 * the least rank goes (parameterised active schedules: J. Storer, S. Wu, R. Vaccari, New search spaces for sequencing
 * problems, Management Science 38, 1992). When each can begin is only found out for as many as decide it.
 */
export class FreeTasks {
  readonly #bench: Bench;
  /** Rank of each task, least first: where there is a grace, the minute by which it should be begun. */
  readonly rank: Float64Array;
  /** Minutes by which a task goes before others of its rank; counts where there is a grace. */
  readonly bonus: Float64Array;
  /** As in the style by which they are put in. */
  grace: Minutes | null = null;
  /** By need of clear air: from when on it is met. */
  readonly #clear: Int32Array;
  /** All that are free to go, and those of them whose piece is begun: where no other may be begun, these compete. */
  readonly #all: BenchTask[] = [];
  readonly #begun: BenchTask[] = [];
  #free: BenchTask[] = this.#all;
  /** By task: before when it cannot begin for its windows, and by when it must be begun for them. */
  readonly #opens: Float64Array;
  readonly #latest: Float64Array;
  /** By task: a minute before which it cannot begin now. */
  readonly #could: Float64Array;
  /** By task: its rank as it counts now. */
  readonly #ranks: Float64Array;
  /** The next task of those that keep their order, if it is free to go. */
  #next: BenchTask | null = null;
  /** Whether a task lets what keeps its order begin in time. */
  readonly #fits: (task: BenchTask, next: BenchTask | null) => boolean;
  /** The task that must be begun soonest for its windows, and by when. */
  #pressing: BenchTask | null = null;
  #deadline: Minutes = NEVER;
  /** All that have to be begun by some minute. */
  readonly #due: BenchTask[] = [];

  /** @param fits whether a task lets what keeps its order begin in time */
  constructor(bench: Bench, fits: (task: BenchTask, next: BenchTask | null) => boolean) {
    this.#bench = bench;
    this.#fits = fits;
    const count = bench.tasks.length;
    this.#clear = new Int32Array(bench.needs.length);
    this.rank = new Float64Array(count);
    this.#opens = new Float64Array(count);
    this.#latest = new Float64Array(count);
    this.#could = new Float64Array(count);
    this.#ranks = new Float64Array(count);
    this.bonus = new Float64Array(count);
  }

  clear(): void {
    this.#all.length = 0;
    this.#begun.length = 0;
  }

  add(task: BenchTask): void {
    this.#opens[task.index] = earliest(task) - (task.setUp?.minutes ?? 0);
    this.#latest[task.index] = latestBegin(task);
    this.#ranks[task.index] = this.#rankNow(task);
    this.#sortIn(this.#all, task, this.#all.length);
    if (task.piece.begun) this.#sortIn(this.#begun, task, this.#begun.length);
  }

  /** Puts a task among those before a place, least rank first. */
  #sortIn(free: BenchTask[], task: BenchTask, end: number): void {
    const rank = this.#ranks[task.index] as number;
    let place = end;
    for (; place > 0; place--) {
      const before = free[place - 1] as BenchTask;
      if ((this.#ranks[before.index] as number) <= rank) break;
      free[place] = before;
    }
    free[place] = task;
  }

  #rankNow({ index }: BenchTask): number {
    const rank = this.rank[index] as number;
    if (this.grace === null) return rank;
    return Math.max(rank, this.#bench.clock - this.grace) - (this.bonus[index] as number);
  }

  /** Ranks anew: more may be late by now. */
  #rankAgain(): void {
    const free = this.#free;
    for (let place = 0; place < free.length; place++) {
      const task = free[place] as BenchTask;
      this.#ranks[task.index] = this.#rankNow(task);
      this.#sortIn(free, task, place);
    }
  }

  remove(task: BenchTask): void {
    this.#all.splice(this.#all.indexOf(task), 1);
    const place = this.#begun.indexOf(task);
    if (place >= 0) this.#begun.splice(place, 1);
    else {
      // Its piece has just been begun.
      for (const other of this.#all) {
        if (other.piece === task.piece) this.#sortIn(this.#begun, other, this.#begun.length);
      }
    }
  }

  /**
   * The next task to go: of those that can begin first, or a little later, the one of least rank.
   *
   * @param next the next task of those that keep their order, if it is free to go
   */
  choose(style: Style, next: BenchTask | null): BenchTask | null {
    const bench = this.#bench;
    if (this.#all.length === 0) return next;
    const begins = style.mostInWork >= bench.pieces.length || inWork(bench) < style.mostInWork;
    this.#free = begins ? this.#all : this.#begun;
    if (next !== null && !findBegin(bench, next, bench.clock)) {
      // A window missed: the play itself sees to it.
      if (bench.missed !== null) return next;
      next.begin = NEVER;
      next.end = NEVER;
    }
    this.#next = next;
    if (next !== null) this.#ranks[next.index] = this.#rankNow(next);
    if (this.grace !== null && this.grace < NEVER) this.#rankAgain();
    this.#press();
    if (next !== null && next.end > this.#deadline) next.begin = NEVER;
    const found = this.#chooseFirst(style, this.#leastBegin()) ?? this.#chooseAmongAll(style);
    if (bench.missed !== null || found === null || found === this.#pressing) {
      return found ?? this.#pressing ?? next ?? (this.#all[0] as BenchTask);
    }
    return style.holdBack && found.holds > 0 ? this.#heldOff(found) : found;
  }

  /** Notes which task must be begun soonest for its windows. */
  #press(): void {
    this.#deadline = NEVER;
    this.#pressing = null;
    this.#due.length = 0;
    for (const task of this.#free) {
      const latest = this.#latest[task.index] as number;
      if (latest >= NEVER) continue;
      this.#due.push(task);
      if (latest >= this.#deadline) continue;
      this.#deadline = latest;
      this.#pressing = task;
    }
  }

  /** A minute before which none can begin. */
  #leastBegin(): Minutes {
    const bench = this.#bench;
    const floor = openMinute(bench);
    const clear = this.#clear;
    for (let need = 0; need < clear.length; need++) clear[need] = Math.max(floor, clearFor(bench, need));
    let least = this.#next?.begin ?? NEVER;
    for (const task of this.#free) {
      // A preparation may come before the air is clear for the task itself.
      const could = Math.max(
        this.#opens[task.index] as number,
        task.plain ? (clear[task.need] as number) : floor,
      );
      this.#could[task.index] = could;
      task.begin = UNSEEN;
      if (could < least) least = could;
    }
    return least;
  }

  /** Of those that begin at the least minute there is the one of least rank; null: there is none, or others count, too. */
  #chooseFirst(style: Style, least: Minutes): BenchTask | null {
    if (style.patience > 0) return null;
    let best: BenchTask | null = null;
    let rankOfBest = Number.POSITIVE_INFINITY;
    const next = this.#next;
    if (next !== null && next.begin === least && least < NEVER) {
      best = next;
      rankOfBest = this.#rankAsBegun(next, style);
    }
    for (const task of this.#free) {
      const rank = this.#ranks[task.index] as number;
      if (rank >= rankOfBest) break;
      if (task.begin !== UNSEEN || (this.#could[task.index] as number) > least) continue;
      if (!this.#see(task, style.gapsOnly)) return task;
      const asBegun = this.#rankAsBegun(task, style);
      if (task.begin > least || asBegun >= rankOfBest) continue;
      best = task;
      rankOfBest = asBegun;
    }
    return best;
  }

  #chooseAmongAll(style: Style): BenchTask | null {
    const next = this.#next;
    let soonest = next?.end ?? NEVER;
    let first = next?.begin ?? NEVER;
    for (const task of this.#free) {
      if (task.begin === UNSEEN) {
        if ((this.#could[task.index] as number) > soonest) task.begin = NEVER;
        else if (!this.#see(task, style.gapsOnly)) return task;
      }
      if (task.begin >= NEVER) continue;
      if (task.end < soonest) soonest = task.end;
      if (task.begin < first) first = task.begin;
    }
    const before = first + style.patience * (soonest - first);
    let best: BenchTask | null = null;
    let rankOfBest = Number.POSITIVE_INFINITY;
    if (next !== null && next.begin <= before && next.begin < NEVER) {
      best = next;
      rankOfBest = this.#rankAsBegun(next, style);
    }
    for (const task of this.#free) {
      if (task.begin > before || task.begin >= NEVER) continue;
      const rank = this.#rankAsBegun(task, style);
      if (rank >= rankOfBest) continue;
      best = task;
      rankOfBest = rank;
    }
    return best;
  }

  /** The rank of a task, with what counts against it where it could begin now. */
  #rankAsBegun(task: BenchTask, { setUpCounts, airCounts, hookCounts }: Style): number {
    const rank = (this.#ranks[task.index] as number) + setUpCounts * task.setUpMinutes;
    if (airCounts + hookCounts === 0) return rank;
    const { calendar } = this.#bench;
    const { start, end, holds, hook } = task;
    const left = Math.min(LONG, calendar.closing(calendar.at(start)) - end);
    const hooked = hook === null ? 0 : openingAfter(hook.until, end) - end;
    return rank + airCounts * Math.min(left, holds) + hookCounts * Math.min(left, hooked);
  }

  /** Finds out when a task could begin, if it may. @returns false: a window of it was missed */
  #see(task: BenchTask, gapsOnly: boolean): boolean {
    const bench = this.#bench;
    if (!findBegin(bench, task, bench.clock)) {
      task.begin = NEVER;
      return bench.missed === null;
    }
    if (!this.#may(task) || (gapsOnly && task !== this.#pressing && !this.#fits(task, this.#next)))
      task.begin = NEVER;
    return true;
  }

  /** Whether a task lets those that have to be begun for their windows meet them. */
  #may(task: BenchTask): boolean {
    if (task === this.#pressing) return true;
    if (task.end > this.#deadline) return false;
    const { keepsOut: table, airs } = this.#bench;
    for (const due of this.#due) {
      if (due === task) continue;
      const kept = table[task.airKind * airs + due.airKind] as number;
      const latest = this.#latest[due.index] as number;
      if ((kept > 0 && task.end + kept > latest) || takesLastHook(task, due, latest)) return false;
    }
    return true;
  }

  /** Of the tasks that could begin before the one found is done, and that it would keep out, the one of least rank. */
  #heldOff(found: BenchTask): BenchTask {
    const bench = this.#bench;
    const shuts = bench.calendar.closing(bench.calendar.at(found.start));
    let best = found;
    let least = Number.POSITIVE_INFINITY;
    const consider = (task: BenchTask): void => {
      const rank = this.#ranks[task.index] as number;
      if (rank >= least || !keepsOut(bench, found, task) || keepsOut(bench, task, found)) return;
      if (task.begin === UNSEEN) {
        if ((this.#could[task.index] as number) >= found.end || !findBegin(bench, task, bench.clock)) return;
      }
      if (task.begin >= found.end || task.end > this.#deadline || task.end + found.minutes > shuts) return;
      best = task;
      least = rank;
    };
    for (const task of this.#free) consider(task);
    if (this.#next !== null) consider(this.#next);
    bench.missed = null;
    return best;
  }
}

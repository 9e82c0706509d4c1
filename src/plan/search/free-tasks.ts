import type { Minutes } from "../../time/instant.ts";
import { findBegin } from "./begin-task.ts";
import type { Bench, BenchPiece, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { sortIn, takeOut } from "./ranked-tasks.ts";
import type { Style } from "./style.ts";
import {
  clearFor,
  earliest,
  inWork,
  keepsOut,
  latestBegin,
  letsMeet,
  openMinute,
  rankAsBegun,
} from "./what-may-follow.ts";

/** Begins of tasks not looked at yet, and of those to be looked at only if their rank matters. */
const UNSEEN = -1;
const PUT_OFF = -2;

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
  readonly #opens: Int32Array;
  readonly #latest: Int32Array;
  /** By task: a minute before which it cannot begin now. */
  readonly #could: Int32Array;
  /** By task: its rank as it counts now. */
  readonly #ranks: Float64Array;
  /** The next task of those that keep their order, if it is free to go. */
  #next: BenchTask | null = null;
  /** Whether a task lets what keeps its order begin in time. */
  readonly #fits: (task: BenchTask, next: BenchTask | null) => boolean;
  /** The task that must be begun soonest for its windows, and by when. */
  #pressing: BenchTask | null = null;
  #deadline: Minutes = NEVER;
  /** All that have to be begun by some minute: so many of a list that is never cut, which takes the engine long. */
  readonly #due: BenchTask[] = [];
  #dueCount = 0;
  /** Whether the task chosen last has been laid out on the bench as it is. */
  isLaidOut = false;

  constructor(bench: Bench, fits: (task: BenchTask, next: BenchTask | null) => boolean) {
    this.#bench = bench;
    this.#fits = fits;
    const count = bench.tasks.length;
    this.#clear = new Int32Array(bench.needs.length);
    this.rank = new Float64Array(count);
    this.#opens = new Int32Array(count);
    this.#latest = new Int32Array(count);
    this.#could = new Int32Array(count);
    this.#ranks = new Float64Array(count);
    this.bonus = new Float64Array(count);
  }

  clear(): void {
    this.#all.length = 0;
    this.#begun.length = 0;
  }

  add(task: BenchTask): void {
    this.#opens[task.index] = Math.min(2 * NEVER, earliest(task) - (task.setUp?.minutes ?? 0));
    this.#latest[task.index] = latestBegin(task);
    this.#ranks[task.index] = this.#rankNow(task);
    sortIn(this.#all, task, this.#all.length, this.#ranks);
    if (task.piece.begun) sortIn(this.#begun, task, this.#begun.length, this.#ranks);
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
      sortIn(free, task, place, this.#ranks);
    }
  }

  remove(task: BenchTask): void {
    const all = this.#all;
    takeOut(all, task);
    if (takeOut(this.#begun, task)) return;
    // Its piece has just been begun.
    for (let place = 0; place < all.length; place++) {
      const other = all[place] as BenchTask;
      if (other.piece === task.piece) sortIn(this.#begun, other, this.#begun.length, this.#ranks);
    }
  }

  /**
   * The next task to go: of those that can begin first, or a little later, the one of least rank.
   *
   * @param next the next task of those that keep their order, if it is free to go
   */
  choose(style: Style, next: BenchTask | null): BenchTask | null {
    const bench = this.#bench;
    this.isLaidOut = false;
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
    const least = this.#lookOver(style.inTurn === true);
    const found = this.#chooseFirst(style, least) ?? this.#chooseAmongAll(style);
    if (found === null) return this.#pressing ?? next ?? (this.#all[0] as BenchTask);
    if (bench.missed !== null) return found;
    const holdsBack = style.holdBack && found.holds > 0 && found !== this.#pressing;
    const chosen = holdsBack ? this.#heldOff(found, style.gapsOnly) : found;
    this.isLaidOut = chosen.begin < NEVER;
    return chosen;
  }

  /** Notes which task must be begun soonest for its windows. @returns a minute before which none can begin */
  #lookOver(inTurn: boolean): Minutes {
    const bench = this.#bench;
    const free = this.#free;
    const floor = openMinute(bench);
    const clear = this.#clear;
    for (let need = 0; need < clear.length; need++)
      clear[need] = Math.max(floor, clearFor(bench, need, bench.clearAt));
    let least = NEVER;
    let deadline = NEVER;
    this.#pressing = null;
    let due = 0;
    let turn: BenchPiece | null = null;
    for (let place = 0; place < free.length; place++) {
      const task = free[place] as BenchTask;
      const takesRoom = inTurn && !task.piece.begun && task.piece.underLimit;
      if (takesRoom) turn ??= task.piece;
      task.begin = takesRoom && task.piece !== turn ? NEVER : UNSEEN;
      if (task.begin === NEVER) continue;
      // A preparation may come before the air is clear for the task itself.
      const could = Math.max(
        this.#opens[task.index] as number,
        task.plain ? (clear[task.need] as number) : floor,
      );
      this.#could[task.index] = could;
      if (could < least) least = could;
      const latest = this.#latest[task.index] as number;
      if (latest >= NEVER) continue;
      this.#due[due++] = task;
      if (latest >= deadline) continue;
      deadline = latest;
      this.#pressing = task;
    }
    this.#deadline = deadline;
    this.#dueCount = due;
    const next = this.#next;
    if (next === null) return least;
    if (next.end > deadline) next.begin = NEVER;
    return Math.min(least, next.begin);
  }

  /** Of those that begin at the least minute there is the one of least rank; null: there is none, or others count, too. */
  #chooseFirst(style: Style, least: Minutes): BenchTask | null {
    if (style.patience > 0) return null;
    let best: BenchTask | null = null;
    let rankOfBest = Number.POSITIVE_INFINITY;
    const next = this.#next;
    if (next !== null && next.begin === least && least < NEVER) {
      best = next;
      rankOfBest = rankAsBegun(this.#bench, next, this.#ranks, style);
    }
    const free = this.#free;
    for (let place = 0; place < free.length; place++) {
      const task = free[place] as BenchTask;
      if ((this.#ranks[task.index] as number) >= rankOfBest) break;
      if (task.begin !== UNSEEN || (this.#could[task.index] as number) > least) continue;
      if (!this.#see(task, style.gapsOnly)) return task;
      const asBegun = rankAsBegun(this.#bench, task, this.#ranks, style);
      if (task.begin > least || asBegun >= rankOfBest) continue;
      best = task;
      rankOfBest = asBegun;
    }
    return best;
  }

  #chooseAmongAll(style: Style): BenchTask | null {
    const next = this.#next;
    const free = this.#free;
    let soonest = next?.end ?? NEVER;
    let first = next?.begin ?? NEVER;
    for (let place = 0; place < free.length; place++) {
      const task = free[place] as BenchTask;
      if (task.begin === UNSEEN) {
        const could = this.#could[task.index] as number;
        if (could > soonest) task.begin = NEVER;
        // It neither begins nor ends before all others: seen only if its rank matters.
        else if (could >= first && could + task.minutes >= soonest && !task.mayStop && !task.shuts) {
          task.begin = PUT_OFF;
          continue;
        } else if (!this.#see(task, style.gapsOnly)) return task;
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
      rankOfBest = rankAsBegun(this.#bench, next, this.#ranks, style);
    }
    for (let place = 0; place < free.length; place++) {
      const task = free[place] as BenchTask;
      if ((this.#ranks[task.index] as number) >= rankOfBest) break;
      if (task.begin === PUT_OFF && (this.#could[task.index] as number) <= before)
        this.#see(task, style.gapsOnly);
      if (task.begin === PUT_OFF || task.begin > before || task.begin >= NEVER) continue;
      const rank = rankAsBegun(this.#bench, task, this.#ranks, style);
      if (rank >= rankOfBest) continue;
      best = task;
      rankOfBest = rank;
    }
    return best;
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
    for (let place = 0; place < this.#dueCount; place++) {
      const due = this.#due[place] as BenchTask;
      if (due === task) continue;
      if (!letsMeet(this.#bench, task, due, this.#latest[due.index] as number)) return false;
    }
    return true;
  }

  /** Of the tasks that could begin before the one found is done, and that it would keep out, the one of least rank. */
  #heldOff(found: BenchTask, gapsOnly: boolean): BenchTask {
    const bench = this.#bench;
    const free = this.#free;
    const shuts = bench.calendar.closing(bench.calendar.at(found.start));
    let best = found;
    let least = Number.POSITIVE_INFINITY;
    for (let place = 0; place <= free.length; place++) {
      const task = place < free.length ? (free[place] as BenchTask) : this.#next;
      if (task === null) break;
      const rank = this.#ranks[task.index] as number;
      if (rank >= least || !keepsOut(bench, found, task) || keepsOut(bench, task, found)) continue;
      if (task.begin === UNSEEN || task.begin === PUT_OFF) {
        if ((this.#could[task.index] as number) >= found.end) continue;
        if (task.begin === PUT_OFF) this.#see(task, gapsOnly);
        else if (!findBegin(bench, task, bench.clock)) continue;
      }
      if (task.begin >= found.end || task.end > this.#deadline || task.end + found.minutes > shuts) continue;
      best = task;
      least = rank;
    }
    bench.missed = null;
    return best;
  }
}

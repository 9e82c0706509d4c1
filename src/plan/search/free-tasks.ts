import type { Minutes } from "../../time/instant.ts";
import { findBegin } from "./begin-task.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Style } from "./style.ts";
import { clearFor, earliest, inWork, keepsOut, latestBegin, openMinute } from "./what-may-follow.ts";

/** Not looked at yet. */
const UNSEEN = -1;

/**
 * The tasks that could go next, by rank, and the choice among them: of those that can begin before any could be done,
 * the least rank goes (parameterised active schedules: J. Storer, S. Wu, R. Vaccari, New search spaces for sequencing
 * problems, Management Science 38, 1992). When each can begin is only found out for as many as decide it.
 */
export class FreeTasks {
  readonly #bench: Bench;
  /** Rank of each task, least first. */
  readonly rank: Float64Array;
  readonly #free: BenchTask[] = [];
  /** By task: before when it cannot begin for its windows, and by when it must be begun for them. */
  readonly #opens: Float64Array;
  readonly #latest: Float64Array;
  /** By task: a minute before which it cannot begin now. */
  readonly #could: Float64Array;
  /** The next task of those that keep their order, if it is free to go. */
  #next: BenchTask | null = null;
  /** Whether a task lets what keeps its order begin in time. */
  #fits: (task: BenchTask) => boolean = () => true;
  /** The task that must be begun soonest for its windows, and by when. */
  #pressing: BenchTask | null = null;
  #deadline: Minutes = NEVER;

  constructor(bench: Bench) {
    this.#bench = bench;
    const count = bench.tasks.length;
    this.rank = new Float64Array(count);
    this.#opens = new Float64Array(count);
    this.#latest = new Float64Array(count);
    this.#could = new Float64Array(count);
  }

  clear(): void {
    this.#free.length = 0;
  }

  add(task: BenchTask): void {
    this.#opens[task.index] = earliest(task) - (task.setUp?.minutes ?? 0);
    this.#latest[task.index] = latestBegin(task);
    const free = this.#free;
    const rank = this.rank[task.index] as number;
    let place = free.length;
    for (; place > 0; place--) {
      const before = free[place - 1] as BenchTask;
      if ((this.rank[before.index] as number) <= rank) break;
      free[place] = before;
    }
    free[place] = task;
  }

  remove(task: BenchTask): void {
    this.#free.splice(this.#free.indexOf(task), 1);
  }

  /**
   * The next task to go: of those that can begin first, or a little later, the one of least rank.
   *
   * @param next the next task of those that keep their order, if it is free to go
   * @param fits whether a task lets what keeps its order begin in time
   */
  choose(style: Style, next: BenchTask | null, fits: (task: BenchTask) => boolean): BenchTask | null {
    const bench = this.#bench;
    const free = this.#free;
    if (free.length === 0) return next;
    if (next !== null && !findBegin(bench, next, bench.clock)) {
      // A window missed: the play itself sees to it.
      if (bench.missed !== null) return next;
      next.begin = NEVER;
      next.end = NEVER;
    }
    this.#next = next;
    this.#fits = fits;
    this.#press();
    const found = this.#chooseFirst(style, this.#leastBegin(style)) ?? this.#chooseAmongAll(style);
    if (bench.missed !== null || found === null || found === this.#pressing) {
      return found ?? this.#pressing ?? next ?? (free[0] as BenchTask);
    }
    return style.holdBack && found.holds > 0 ? this.#heldOff(found) : found;
  }

  /** Notes which task must be begun soonest for its windows. */
  #press(): void {
    this.#deadline = NEVER;
    this.#pressing = null;
    for (const task of this.#free) {
      const latest = this.#latest[task.index] as number;
      if (latest >= this.#deadline) continue;
      this.#deadline = latest;
      this.#pressing = task;
    }
  }

  /** A minute before which none can begin; those that may not be begun at all are marked so. */
  #leastBegin({ mostInWork }: Style): Minutes {
    const bench = this.#bench;
    const begins = mostInWork >= bench.pieces.length || inWork(bench) < mostInWork;
    const floor = openMinute(bench);
    let least = this.#next?.begin ?? NEVER;
    for (const task of this.#free) {
      if (!begins && !task.piece.begun) {
        task.begin = NEVER;
        continue;
      }
      // A preparation may come before the air is clear for the task itself.
      const clear = task.plain ? clearFor(bench, task) : 0;
      const could = Math.max(floor, this.#opens[task.index] as number, clear);
      this.#could[task.index] = could;
      task.begin = UNSEEN;
      if (could < least) least = could;
    }
    return least;
  }

  /** Of those that begin at the least minute there is the one of least rank; null: there is none, or others count, too. */
  #chooseFirst({ patience, setUpCounts, gapsOnly }: Style, least: Minutes): BenchTask | null {
    if (patience > 0) return null;
    let best: BenchTask | null = null;
    let rankOfBest = Number.POSITIVE_INFINITY;
    let isBlocked = false;
    const next = this.#next;
    if (next !== null && next.begin === least && least < NEVER) {
      if (next.end > this.#deadline) isBlocked = true;
      else {
        best = next;
        rankOfBest = (this.rank[next.index] as number) + setUpCounts * next.setUpMinutes;
      }
    }
    for (const task of this.#free) {
      const rank = this.rank[task.index] as number;
      if (rank >= rankOfBest) break;
      if (task.begin !== UNSEEN || (this.#could[task.index] as number) > least) continue;
      if (!this.#see(task)) return task;
      if (task.begin > least) continue;
      if (!this.#may(task, gapsOnly)) isBlocked = true;
      else if (rank + setUpCounts * task.setUpMinutes < rankOfBest) {
        best = task;
        rankOfBest = rank + setUpCounts * task.setUpMinutes;
      }
    }
    return best ?? (isBlocked ? this.#pressing : null);
  }

  #chooseAmongAll({ patience, setUpCounts, gapsOnly }: Style): BenchTask | null {
    const next = this.#next;
    let soonest = next?.end ?? NEVER;
    let first = next?.begin ?? NEVER;
    for (const task of this.#free) {
      if (task.begin === UNSEEN) {
        if ((this.#could[task.index] as number) > soonest) task.begin = NEVER;
        else if (!this.#see(task)) return task;
      }
      if (task.begin >= NEVER) continue;
      if (task.end < soonest) soonest = task.end;
      if (task.begin < first) first = task.begin;
    }
    const before = first + patience * (soonest - first);
    let best: BenchTask | null = null;
    let rankOfBest = Number.POSITIVE_INFINITY;
    if (next !== null && next.begin <= before && next.begin < NEVER && next.end <= this.#deadline) {
      best = next;
      rankOfBest = (this.rank[next.index] as number) + setUpCounts * next.setUpMinutes;
    }
    for (const task of this.#free) {
      if (task.begin > before || task.begin >= NEVER || !this.#may(task, gapsOnly)) continue;
      const rank = (this.rank[task.index] as number) + setUpCounts * task.setUpMinutes;
      if (rank >= rankOfBest) continue;
      best = task;
      rankOfBest = rank;
    }
    return best;
  }

  /** Finds out when a task could begin. @returns false: a window of it was missed */
  #see(task: BenchTask): boolean {
    const bench = this.#bench;
    if (findBegin(bench, task, bench.clock)) return true;
    task.begin = NEVER;
    return bench.missed === null;
  }

  /** Whether a task lets the pressing one meet its windows, and, where asked, what keeps its order begin in time. */
  #may(task: BenchTask, gapsOnly: boolean): boolean {
    return task === this.#pressing || (task.end <= this.#deadline && (!gapsOnly || this.#fits(task)));
  }

  /** Of the tasks that could begin before the one found is done, and that it would keep out, the one of least rank. */
  #heldOff(found: BenchTask): BenchTask {
    const bench = this.#bench;
    const shuts = bench.calendar.closing(bench.calendar.at(found.start));
    let best = found;
    let least = Number.POSITIVE_INFINITY;
    const consider = (task: BenchTask): void => {
      const rank = this.rank[task.index] as number;
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

import type { Minutes } from "../../time/instant.ts";
import { findBegin } from "./begin-task.ts";
import type { BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Player } from "./play-order.ts";
import type { Style } from "./style.ts";
import { earliest, inWork, keepsOut, latestBegin } from "./what-may-follow.ts";

/**
 * Plays the order that stands without some tasks, and puts these in where they fit (ruin and recreate: G. Schrimpf et
 * al., Record breaking optimization results using the ruin and recreate principle, J. Computational Physics 159, 2000).
 * At each step the next task of the order and all tasks out that could follow compete for the hands: of those that can
 * begin before any could be done, the least rank goes (parameterised active schedules: J. Storer, S. Wu, R. Vaccari,
 * New search spaces for sequencing problems, Management Science 38, 1992).
 */
export class Recreate {
  readonly #player: Player;
  /** Rank of each task, least first. */
  readonly rank: Float64Array;
  /** Tasks out, by number. */
  readonly #out: Uint8Array;
  readonly #pending: Int32Array;
  /** By task that is free to go: before when its windows are not open, and by when it must be begun. */
  readonly #opens: Float64Array;
  readonly #latest: Float64Array;
  #kept: BenchTask[] = [];
  #free: BenchTask[] = [];
  #trial: BenchTask[] = [];
  #outs: BenchTask[] = [];
  /** How many tasks are out and not back. */
  #left = 0;
  /** No task after this place of the order that stands was taken out. */
  #last = 0;

  constructor(player: Player) {
    this.#player = player;
    const count = player.bench.tasks.length;
    this.#out = new Uint8Array(count);
    this.rank = new Float64Array(count);
    this.#pending = new Int32Array(count);
    this.#opens = new Float64Array(count);
    this.#latest = new Float64Array(count);
  }

  /**
   * Takes tasks out and puts them in again, or in for the first time.
   *
   * @param from no task out is put before the first that begins then
   * @returns what the plan then costs; Infinity: more than the ceiling, or it cannot be
   */
  play(outs: readonly BenchTask[], from: Minutes, ceiling: number, style: Style): number {
    const first = this.#takeOut(outs, from);
    const cost = this.#play(first, ceiling, style);
    for (const task of this.#outs) this.#out[task.index] = 0;
    return cost;
  }

  /** @returns the first place that may change */
  #takeOut(outs: readonly BenchTask[], from: Minutes): number {
    const player = this.#player;
    this.#outs.length = 0;
    this.#last = 0;
    let first = player.placeAt(from);
    for (const task of outs) {
      if (this.#out[task.index] === 1) continue;
      this.#out[task.index] = 1;
      this.#outs.push(task);
      const place = player.kept.place(task);
      if (place < 0) this.#last = NEVER;
      else {
        first = Math.min(first, place);
        this.#last = Math.max(this.#last, place);
      }
    }
    return first;
  }

  #play(from: number, ceiling: number, style: Style): number {
    const player = this.#player;
    const { bench, order } = player;
    this.#trial = order.slice(0, from);
    player.begin(this.#trial, from);
    if (!this.#playUpTo(from)) return Number.POSITIVE_INFINITY;
    this.#collect();
    while (this.#left + this.#kept.length > 0) {
      const next = this.#choose(style);
      if (next === null) return Number.POSITIVE_INFINITY;
      if (player.step(next)) this.#settle(next);
      else if (!this.#goOnFromLift()) return Number.POSITIVE_INFINITY;
      if (bench.cost > ceiling) return Number.POSITIVE_INFINITY;
      if (this.#left === 0 && player.place > this.#last && player.hasMet()) return player.costWhenMet();
    }
    return bench.cost;
  }

  /** Plays again what stands in the trial up to a place: from a checkpoint on, or after the play went back. */
  #playUpTo(end: number): boolean {
    const player = this.#player;
    let last = end;
    while (player.place < last) {
      const task = this.#trial[player.place] as BenchTask;
      if (player.step(task)) continue;
      if (player.liftsLeft < 0) return false;
      last = Math.min(last, player.liftedPlace);
    }
    if (last < end) this.#takeOutLifted(last);
    this.#trial.length = last;
    return true;
  }

  /** A task was lifted: it is out again, with all that follows on its piece, and others may go before it. */
  #goOnFromLift(): boolean {
    const player = this.#player;
    if (player.liftsLeft < 0) return false;
    const { liftedPlace } = player;
    this.#takeOutLifted(liftedPlace);
    if (!this.#playUpTo(liftedPlace)) return false;
    this.#collect();
    return true;
  }

  #takeOutLifted(place: number): void {
    const lifted = this.#trial[place];
    if (lifted === undefined) return;
    for (const task of lifted.piece.tasks) {
      if (task.running || task.index < lifted.index || this.#out[task.index] === 1) continue;
      this.#out[task.index] = 1;
      this.#outs.push(task);
      this.#last = Math.max(this.#last, this.#player.kept.place(task));
    }
  }

  /** Sorts what is not played yet into what keeps its order and what is free to go. */
  #collect(): void {
    const { order } = this.#player;
    this.#kept.length = 0;
    this.#free.length = 0;
    this.#left = 0;
    for (let index = order.length - 1; index >= 0; index--) {
      const task = order[index] as BenchTask;
      if (this.#out[task.index] === 1 || this.#isPlayed(task)) continue;
      this.#pending[task.index] = this.#countPending(task);
      this.#kept.push(task);
    }
    for (const task of this.#outs) {
      if (this.#isPlayed(task)) continue;
      const pending = this.#countPending(task);
      this.#pending[task.index] = pending;
      this.#left++;
      if (pending === 0) this.#setFree(task);
    }
  }

  #setFree(task: BenchTask): void {
    this.#opens[task.index] = earliest(task);
    this.#latest[task.index] = latestBegin(task);
    this.#free.push(task);
  }

  #countPending({ waits }: BenchTask): number {
    let pending = 0;
    for (const { on } of waits) if (on.ended === null && !on.running && !this.#isPlayed(on)) pending++;
    return pending;
  }

  #isPlayed(task: BenchTask): boolean {
    const { position } = task;
    return position >= 0 && position < this.#player.place && this.#trial[position] === task;
  }

  /** What follows a task just played may come free. */
  #settle(task: BenchTask): void {
    if (this.#out[task.index] === 0) this.#kept.pop();
    else {
      const place = this.#free.indexOf(task);
      this.#free[place] = this.#free[this.#free.length - 1] as BenchTask;
      this.#free.pop();
      this.#left--;
    }
    for (const { task: next } of task.awaited) {
      const left = (this.#pending[next.index] as number) - 1;
      this.#pending[next.index] = left;
      if (left === 0 && this.#out[next.index] === 1) this.#setFree(next);
    }
  }

  /** Whether a task can go first without delaying what keeps its order, as far as can be seen. */
  #fits(task: BenchTask, next: BenchTask | null): boolean {
    const { bench } = this.#player;
    if (next !== null) {
      const again = task.station === next.station && task.setUp !== next.setUp && next.setUpMinutes === 0;
      if (task.end > (again ? next.start - (next.setUp?.minutes ?? 0) : next.begin)) return false;
    }
    if (task.holds === 0) return true;
    for (let index = this.#kept.length - 1; index >= 0; index--) {
      const later = this.#kept[index] as BenchTask;
      if (this.#player.kept.start(later) >= task.end + task.holds) return true;
      if (keepsOut(bench, task, later)) return false;
    }
    return true;
  }

  #choose({ patience, setUpCounts, holdBack, gapsOnly, mostInWork }: Style): BenchTask | null {
    const { bench } = this.#player;
    const free = this.#free;
    const kept = this.#kept[this.#kept.length - 1];
    const ready = kept !== undefined && this.#pending[kept.index] === 0;
    if (free.length === 0) return ready ? kept : null;
    let soonest = NEVER;
    let first = NEVER;
    if (ready) {
      if (!findBegin(bench, kept, bench.clock)) {
        // A window missed: the play itself sees to it.
        if (bench.missed !== null) return kept;
        kept.begin = NEVER;
      } else {
        soonest = kept.end;
        first = kept.begin;
      }
    }
    const begins = mostInWork >= bench.pieces.length || inWork(bench) < mostInWork;
    let deadline = NEVER;
    let pressing: BenchTask | null = null;
    for (const task of free) {
      const latest = this.#latest[task.index] as number;
      if (latest < deadline) {
        deadline = latest;
        pressing = task;
      }
      if ((this.#opens[task.index] as number) > soonest || !(begins || task.piece.begun)) {
        task.begin = NEVER;
        continue;
      }
      if (!findBegin(bench, task, bench.clock)) {
        if (bench.missed !== null) return task;
        task.begin = NEVER;
        continue;
      }
      if (task.end < soonest) soonest = task.end;
      if (task.begin < first) first = task.begin;
    }
    const before = first + patience * (soonest - first);
    let best: BenchTask | null = null;
    let least = Number.POSITIVE_INFINITY;
    if (ready && kept.begin <= before && kept.begin < NEVER && kept.end <= deadline) {
      best = kept;
      least = (this.rank[kept.index] as number) + setUpCounts * kept.setUpMinutes;
    }
    for (const task of free) {
      if (task.begin > before || task.begin >= NEVER) continue;
      if (task !== pressing && (task.end > deadline || (gapsOnly && !this.#fits(task, ready ? kept : null))))
        continue;
      const rank = (this.rank[task.index] as number) + setUpCounts * task.setUpMinutes;
      if (rank < least) {
        least = rank;
        best = task;
      }
    }
    if (best !== null) {
      return holdBack && best.holds > 0 ? this.#heldOff(best, ready ? kept : null, deadline) : best;
    }
    return pressing ?? (ready ? kept : (free[0] ?? null));
  }

  /** Of the tasks that could begin before the one found is done, and that it would keep out, the one of least rank. */
  #heldOff(found: BenchTask, kept: BenchTask | null, deadline: Minutes): BenchTask {
    const { bench } = this.#player;
    const shuts = bench.calendar.closing(bench.calendar.at(found.start));
    let best = found;
    let least = Number.POSITIVE_INFINITY;
    const consider = (task: BenchTask): void => {
      if (task.begin >= found.end || task.end > deadline || task.end + found.minutes > shuts) return;
      const rank = this.rank[task.index] as number;
      if (rank >= least || !keepsOut(bench, found, task) || keepsOut(bench, task, found)) return;
      best = task;
      least = rank;
    };
    for (const task of this.#free) consider(task);
    if (kept !== null) consider(kept);
    return best;
  }
}

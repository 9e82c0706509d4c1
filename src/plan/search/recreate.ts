import type { Minutes } from "../../time/instant.ts";
import type { BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { FreeTasks } from "./free-tasks.ts";
import type { Player } from "./play-order.ts";
import type { Style } from "./style.ts";
import { keepsOut } from "./what-may-follow.ts";

/**
 * Plays the order that stands without some tasks, and puts these in where they fit (ruin and recreate: G. Schrimpf et
 * al., Record breaking optimization results using the ruin and recreate principle, J. Computational Physics 159, 2000).
 * At each step the next task of the order and all tasks out that could follow compete for the hands.
 */
export class Recreate {
  readonly #player: Player;
  readonly #free: FreeTasks;
  /** Tasks out, by number. */
  readonly #out: Uint8Array;
  readonly #pending: Int32Array;
  #kept: BenchTask[] = [];
  #trial: BenchTask[] = [];
  #outs: BenchTask[] = [];
  /** How many tasks are out and not back. */
  #left = 0;
  /** No task after this place of the order that stands was taken out. */
  #last = 0;

  constructor(player: Player) {
    this.#player = player;
    this.#free = new FreeTasks(player.bench, (task, next) => this.#fits(task, next));
    const count = player.bench.tasks.length;
    this.#out = new Uint8Array(count);
    this.#pending = new Int32Array(count);
  }

  /** Rank of each task, least first. */
  get rank(): Float64Array {
    return this.#free.rank;
  }

  /** What goes before others of its rank, where the style has a grace. */
  get bonus(): Float64Array {
    return this.#free.bonus;
  }

  /**
   * Takes tasks out and puts them in again, or in for the first time.
   *
   * @param from no task out is put before the first that begins then
   * @param until the play ends before the first task that begins then or later
   * @returns what the plan then costs at least; Infinity: more than the ceiling, or it cannot be
   */
  play(
    outs: readonly BenchTask[],
    from: Minutes,
    ceiling: number,
    style: Style,
    until: Minutes = NEVER,
  ): number {
    const first = this.#takeOut(outs, from);
    this.#free.grace = style.grace;
    const cost = this.#play(first, ceiling, style, until);
    this.#out.fill(0);
    return cost;
  }

  /** @returns the first place that may change */
  #takeOut(outs: readonly BenchTask[], from: Minutes): number {
    const player = this.#player;
    this.#outs.length = 0;
    this.#last = 0;
    let first = player.placeAt(from);
    for (let index = 0; index < outs.length; index++) {
      const task = outs[index] as BenchTask;
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

  #play(from: number, ceiling: number, style: Style, until: Minutes): number {
    const player = this.#player;
    const { bench, order } = player;
    this.#trial = order.slice(0, from);
    player.begin(this.#trial, from);
    if (!this.#playUpTo(from)) return Number.POSITIVE_INFINITY;
    this.#collect();
    while (this.#left + this.#kept.length > 0) {
      const next = this.#choose(style);
      if (next === null) return Number.POSITIVE_INFINITY;
      if (next.begin >= until && next.begin < NEVER) break;
      if (player.step(next, this.#free.isLaidOut)) this.#settle(next);
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
    const { tasks } = lifted.piece;
    for (let index = 0; index < tasks.length; index++) {
      const task = tasks[index] as BenchTask;
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
    this.#free.clear();
    this.#left = 0;
    for (let index = order.length - 1; index >= 0; index--) {
      const task = order[index] as BenchTask;
      if (this.#out[task.index] === 1) continue;
      // What keeps its order was played up to here.
      if (this.#player.isPlayed(task)) break;
      this.#pending[task.index] = this.#countPending(task);
      this.#kept.push(task);
    }
    for (let index = 0; index < this.#outs.length; index++) {
      const task = this.#outs[index] as BenchTask;
      if (this.#player.isPlayed(task)) continue;
      const pending = this.#countPending(task);
      this.#pending[task.index] = pending;
      this.#left++;
      if (pending === 0) this.#free.add(task);
    }
  }

  #countPending({ waits }: BenchTask): number {
    let pending = 0;
    for (let index = 0; index < waits.length; index++) {
      const { on } = waits[index] as BenchWait;
      if (on.ended === null && !on.running && !this.#player.isPlayed(on)) pending++;
    }
    return pending;
  }

  /** What follows a task just played may come free. */
  #settle(task: BenchTask): void {
    if (this.#out[task.index] === 0) this.#kept.pop();
    else {
      this.#free.remove(task);
      this.#left--;
    }
    const { awaited } = task;
    for (let index = 0; index < awaited.length; index++) {
      const { task: next } = awaited[index] as BenchWait;
      const left = (this.#pending[next.index] as number) - 1;
      this.#pending[next.index] = left;
      if (left === 0 && this.#out[next.index] === 1) this.#free.add(next);
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

  #choose(style: Style): BenchTask | null {
    // Asked for what is not in a list, the engine looks for it long.
    const kept = this.#kept.length > 0 ? this.#kept[this.#kept.length - 1] : undefined;
    const next = kept !== undefined && this.#pending[kept.index] === 0 ? kept : null;
    return this.#free.choose(style, next);
  }
}

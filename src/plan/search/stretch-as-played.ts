import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import type { BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Recreate } from "./recreate.ts";
import { makeStyle, type Style } from "./style.ts";

/** So many tasks go otherwise at most; how often one of them is drawn from all, not only from those that were done. By trial. */
const MOST = 3;
const ANY = 0.2;

/** What is held somewhat longer is so by less than this. */
const SOMEWHAT: Minutes = 60;

/** What a minute of setting up may count for at most, where it counts. By trial. */
const SET_UP = 30;

/** How the work of a stretch of bench time was done, so that it can be done again a little otherwise. */
export class StretchAsPlayed {
  /** By task: NEVER if it was not done. */
  readonly #starts: Float64Array;
  /** By task: what it was lifted to. */
  readonly #lifts: Int32Array;

  /** @param tasks how many the bench has */
  constructor(tasks: number) {
    this.#starts = new Float64Array(tasks);
    this.#lifts = new Int32Array(tasks);
  }

  /** Notes how tasks have just been played. */
  note(tasks: readonly BenchTask[], isPlayed: (task: BenchTask) => boolean): void {
    for (let place = 0; place < tasks.length; place++) {
      const task = tasks[place] as BenchTask;
      const isDone = isPlayed(task);
      this.#starts[task.index] = isDone ? task.start : NEVER;
      this.#lifts[task.index] = isDone ? task.lifted : 0;
    }
  }

  /**
   * Ranks tasks by when they started, and holds those that were held, but for one or a few that go otherwise.
   *
   * @param tasks those that may come free in the stretch: at least one
   * @returns in what style they are to be put in
   */
  vary(
    tasks: readonly BenchTask[],
    from: Minutes,
    until: Minutes,
    { rank, bonus }: Recreate,
    chance: Chance,
  ): Style {
    const done: BenchTask[] = [];
    for (let place = 0; place < tasks.length; place++) {
      const task = tasks[place] as BenchTask;
      const start = this.#starts[task.index] as Minutes;
      if (start < NEVER) done.push(task);
      rank[task.index] = start;
      bonus[task.index] = 0;
      task.lifted = this.#lifts[task.index] as Minutes;
    }
    const draw = (some: readonly BenchTask[]) => some[Math.floor(chance() * some.length)] as BenchTask;
    for (let count = Math.ceil(MOST * chance() * chance()); count > 0; count--) {
      const task = draw(done.length === 0 || chance() < ANY ? tasks : done);
      const start = this.#starts[task.index] as Minutes;
      const minute = Math.floor(from + (until - from) * chance());
      const change = start < NEVER ? Math.floor(5 * chance()) : 0;
      if (change === 0) rank[task.index] = minute;
      else if (change === 1) {
        const other = draw(done);
        [rank[task.index], rank[other.index]] = [rank[other.index] as number, rank[task.index] as number];
      } else if (change === 2) task.lifted = minute + task.rest;
      else if (change === 3) task.lifted = Math.floor(start + SOMEWHAT * chance()) + task.rest;
      else task.lifted = task.lifted > 0 ? 0 : until + task.rest;
    }
    return makeStyle({
      patience: chance() < 0.2 ? chance() : 0,
      setUpCounts: chance() < 0.3 ? SET_UP * chance() : 0,
      holdBack: chance() < 0.5,
    });
  }
}

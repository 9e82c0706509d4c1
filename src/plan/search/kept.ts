import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import { type BenchPiece, type BenchTask, type BenchWait, DECIDED } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/** Figures kept of each task. */
const FIGURES = 7;

/** How each task was played and decided about in the order that stands. */
export class Kept {
  readonly #figures: Int32Array;

  constructor(tasks: number) {
    this.#figures = new Int32Array(FIGURES * tasks);
  }

  keep(task: BenchTask): void {
    const row = FIGURES * task.index;
    this.#figures[row] = task.begin;
    this.#figures[row + 1] = task.setUpMinutes;
    this.#figures[row + 2] = task.start;
    this.#figures[row + 3] = task.end;
    this.#figures[row + 4] = task.lifted;
    this.#figures[row + 5] = task.position;
    this.#figures[row + 6] = task.decided;
  }

  restore(task: BenchTask): void {
    const row = FIGURES * task.index;
    task.begin = this.#figures[row] as number;
    task.setUpMinutes = this.#figures[row + 1] as number;
    task.start = this.#figures[row + 2] as number;
    task.end = this.#figures[row + 3] as number;
    task.lifted = this.#figures[row + 4] as number;
    task.position = this.#figures[row + 5] as number;
    task.decided = this.#figures[row + 6] as number;
  }

  /** Neither played nor decided about. */
  forget(task: BenchTask): void {
    task.position = -1;
    task.lifted = 0;
    task.decided = DECIDED.nothing;
    task.end = NEVER;
    this.keep(task);
  }

  begin({ index }: BenchTask): Minutes {
    return this.#figures[FIGURES * index] as number;
  }

  start({ index }: BenchTask): Minutes {
    return this.#figures[FIGURES * index + 2] as number;
  }

  end({ index }: BenchTask): Minutes {
    return this.#figures[FIGURES * index + 3] as number;
  }

  /** Its place in the order; -1: it is not in it. */
  place({ index }: BenchTask): number {
    return this.#figures[FIGURES * index + 5] as number;
  }

  /** The first place of the order that stands whose task begins at a minute or after it. */
  placeAt(minute: Minutes, order: readonly BenchTask[]): number {
    let low = 0;
    let high = order.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.begin(order[middle] as BenchTask) < minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Whether the task has just been played as it is kept. */
  isAlike({ index, begin, setUpMinutes, end }: BenchTask): boolean {
    const row = FIGURES * index;
    const figures = this.#figures;
    return figures[row] === begin && figures[row + 1] === setUpMinutes && figures[row + 3] === end;
  }

  /**
   * Whether what a piece's tasks to come wait for opens and shuts as it did.
   *
   * @param place those that stand there or later are to come
   * @param from nothing begins before it
   */
  waitsAlike(piece: BenchPiece, place: number, from: Minutes): boolean {
    if (piece.left === 0) return true;
    const { tasks } = piece;
    for (let number = 0; number < tasks.length; number++) {
      const { position, waits } = tasks[number] as BenchTask;
      if (position < place) continue;
      for (let index = 0; index < waits.length; index++) {
        const wait = waits[index] as BenchWait;
        if (wait.on.position < place && !this.#waitAlike(wait, from)) return false;
      }
    }
    return true;
  }

  #waitAlike({ on, windows }: BenchWait, from: Minutes): boolean {
    const before = this.end(on);
    if (on.ended !== null || on.running || on.end === before) return true;
    return windows.every(
      ({ opens, shuts }) =>
        shuts === null &&
        Math.min(NEVER, Math.max(from, openingAfter(opens, on.end))) ===
          Math.min(NEVER, Math.max(from, openingAfter(opens, before))),
    );
  }
}

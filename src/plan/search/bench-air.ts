import { at } from "../at.ts";
import type { Gives, Problem } from "../problem.ts";
import type { BenchTask } from "./bench.ts";

/** By emission: those that must keep apart from it. Empty where there are none. */
export function spreadApart({ apart }: Problem): number[][] {
  const rows: number[][] = [];
  for (const pair of apart) {
    for (const [one, other] of [pair, pair.toReversed()]) {
      if (one === undefined || other === undefined) continue;
      while (rows.length <= one) rows.push([]);
      if (!at(rows, one).includes(other)) at(rows, one).push(other);
    }
  }
  return rows;
}

/** By emission: until when something is in the room at minute 0 that must keep apart from it. */
export function clearAtBeginning({ air }: Problem, apart: readonly (readonly number[])[]): number[] {
  const clear = apart.map(() => 0);
  for (const { what, until } of air)
    for (const other of apart[what] ?? []) clear[other] = Math.max(clear[other] ?? 0, until);
  return clear;
}

/** Numbers what tasks give off, each kind once, and says which kind keeps which out of the room. */
export class AirKinds {
  readonly #kinds: (readonly Gives[])[] = [];
  readonly #names = new Map<string, number>();

  numberOf(gives: readonly Gives[]): number {
    const name = JSON.stringify(gives);
    const known = this.#names.get(name);
    if (known !== undefined) return known;
    this.#names.set(name, this.#kinds.length);
    return this.#kinds.push(gives) - 1;
  }

  get count(): number {
    return this.#kinds.length;
  }

  /** Row by row: for how many minutes a kind, once its task is done, keeps another out of the room. */
  keepsOut(apart: readonly (readonly number[])[]): Int32Array {
    const kinds = this.#kinds;
    const table = new Int32Array(kinds.length ** 2);
    for (const [one, gives] of kinds.entries()) {
      for (const [other, given] of kinds.entries()) {
        for (const { what, lasts } of gives) {
          const place = one * kinds.length + other;
          if (given.some((its) => apart[what]?.includes(its.what)))
            table[place] = Math.max(table[place] as number, lasts);
        }
      }
    }
    return table;
  }
}

/** Numbers what the tasks need the air to be clear of. @returns a task for each number */
export function numberNeeds(tasks: readonly BenchTask[]): BenchTask[] {
  const known = new Map<string, number>();
  return tasks.filter((task) => {
    const name = `${task.fills} ${task.fillsLater} ${task.fillsLater.length > 0 ? task.setUp?.minutes : 0}`;
    const number = known.get(name);
    task.need = number ?? known.size;
    if (number === undefined) known.set(name, task.need);
    return number === undefined;
  });
}

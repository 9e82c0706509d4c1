import { at } from "../at.ts";
import type { Gives, Problem } from "../problem.ts";

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

  /** Row by row: 1 where a kind, once its task is done, keeps another out of the room. */
  keepsOut(apart: readonly (readonly number[])[]): Uint8Array {
    const kinds = this.#kinds;
    const table = new Uint8Array(kinds.length ** 2);
    for (const [one, gives] of kinds.entries()) {
      for (const [other, given] of kinds.entries()) {
        const out = gives.some(
          ({ what, lasts }) => lasts > 0 && given.some((its) => apart[what]?.includes(its.what)),
        );
        if (out) table[one * kinds.length + other] = 1;
      }
    }
    return table;
  }
}

import type { Literal } from "./arcs.ts";
import { type Bounds, WHY } from "./bounds.ts";

/** Before its literals a clause keeps how many they are and how often it helped lately. */
const HEAD = 2;

/** Stands for the help of a clause that is part of the problem. */
const FOR_GOOD = 2 ** 30;

/**
 * Learned clauses: of the literals of each, one must be true. Two literals of every clause are watched, by the scheme
 * of Moskewicz et al. (Chaff, 2001); a watch on a bound is a threshold: once the opposite side reaches it, the literal
 * is false.
 */
export class Clauses {
  /** Clauses one behind the other: HEAD figures, then side and value of each literal. */
  store: Int32Array = new Int32Array(1 << 14);
  #size = 0;
  /** How many clauses have been learned and are kept. */
  learned = 0;
  /** By side: the watches that a rise of this side may break. */
  readonly #watches: Watches[];

  constructor(sides: number) {
    this.#watches = Array.from({ length: sides }, () => new Watches());
  }

  /** How many literals a clause has. */
  length(clause: number): number {
    return this.store[clause] as number;
  }

  /** Where the literals of a clause begin in the store. */
  literals(clause: number): number {
    return clause + HEAD;
  }

  /** Marks a clause as of use: it is then not forgotten soon. */
  praise(clause: number): void {
    if (this.store[clause + 1] === FOR_GOOD) return;
    this.store[clause + 1] = (this.store[clause + 1] as number) + 1;
  }

  /**
   * Keeps a clause of two literals or more.
   *
   * @param sides the literals' sides; the first is the one that becomes true now, the second the last to become false
   */
  add(sides: readonly number[], values: readonly number[]): number {
    const clause = this.#size;
    this.#size += HEAD + 2 * sides.length;
    while (this.#size > this.store.length) this.store = doubled(this.store);
    this.store[clause] = sides.length;
    this.store[clause + 1] = 1;
    for (const [index, side] of sides.entries()) {
      this.store[clause + HEAD + 2 * index] = side;
      this.store[clause + HEAD + 2 * index + 1] = values[index] as number;
    }
    this.learned++;
    this.#watch(clause, 0);
    this.#watch(clause, 1);
    return clause;
  }

  /** Keeps a clause of two literals or more that is never forgotten. None of its literals may be false yet. */
  addForGood(literals: readonly Literal[]): void {
    const clause = this.add(
      literals.map(({ side }) => side),
      literals.map(({ value }) => value),
    );
    this.store[clause + 1] = FOR_GOOD;
    this.learned--;
  }

  /** Draws every conclusion from the newest bound of one side. @returns false on a clash */
  propagate(bounds: Bounds, side: number): boolean {
    const watches = this.#watches[side] as Watches;
    const { store } = this;
    const { list } = watches;
    const reached = bounds.now[side] as number;
    let kept = 0;
    let sound = true;
    for (let place = 0; place < watches.length; place += 2) {
      const threshold = list[place] as number;
      const clause = list[place + 1] as number;
      const moved = sound && threshold <= reached && this.#moveWatch(bounds, clause, side ^ 1, 1 - threshold);
      if (moved) continue;
      list[kept++] = threshold;
      list[kept++] = clause;
      if (!sound || threshold > reached) continue;
      const literal = clause + HEAD;
      sound = bounds.raise(store[literal] as number, store[literal + 1] as number, WHY.CLAUSE, clause);
    }
    watches.length = kept;
    return sound;
  }

  /**
   * Looks for another literal to watch in place of one that has become false, and brings the other watched one to the
   * front.
   *
   * @returns false when there is none, or when the other is true already: the watch stays
   */
  #moveWatch(bounds: Bounds, clause: number, side: number, value: number): boolean {
    const { store } = this;
    const first = clause + HEAD;
    if (store[first] === side && store[first + 1] === value) swapLiterals(store, first, first + 2);
    if (bounds.isTrue(store[first] as number, store[first + 1] as number)) return false;
    const end = first + 2 * (store[clause] as number);
    for (let other = first + 4; other < end; other += 2) {
      if (bounds.isFalse(store[other] as number, store[other + 1] as number)) continue;
      swapLiterals(store, first + 2, other);
      this.#watch(clause, 1);
      return true;
    }
    return false;
  }

  /**
   * Forgets the half of the learned clauses that helped least. Only where no decision stands: no bound's reason is
   * asked for any more.
   */
  forgetHalf(): void {
    const old = this.store.slice(0, this.#size);
    const worths: number[] = [];
    for (let clause = 0; clause < old.length; clause = after(old, clause)) {
      if (worth(old, clause) < FOR_GOOD) worths.push(worth(old, clause));
    }
    const middle = worths.sort((a, b) => a - b)[worths.length >> 1] ?? 0;
    this.#size = 0;
    this.learned = 0;
    for (const watches of this.#watches) watches.length = 0;
    for (let clause = 0; clause < old.length; clause = after(old, clause)) {
      if (worth(old, clause) > middle) this.#keep(old, clause);
    }
  }

  #keep(old: Int32Array, clause: number): void {
    const next = after(old, clause);
    this.store.set(old.subarray(clause, next), this.#size);
    const help = old[clause + 1] as number;
    this.store[this.#size + 1] = help === FOR_GOOD ? FOR_GOOD : help >> 1;
    this.#watch(this.#size, 0);
    this.#watch(this.#size, 1);
    this.#size += next - clause;
    if (help !== FOR_GOOD) this.learned++;
  }

  #watch(clause: number, position: 0 | 1): void {
    const literal = clause + HEAD + 2 * position;
    const side = (this.store[literal] as number) ^ 1;
    (this.#watches[side] as Watches).add(1 - (this.store[literal + 1] as number), clause);
  }
}

/** A growing list of thresholds and clauses. */
class Watches {
  list: Int32Array = new Int32Array(8);
  length = 0;

  add(threshold: number, clause: number): void {
    if (this.length === this.list.length) this.list = doubled(this.list);
    this.list[this.length++] = threshold;
    this.list[this.length++] = clause;
  }
}

function after(store: Int32Array, clause: number): number {
  return clause + HEAD + 2 * (store[clause] as number);
}

/** The more a clause helped, and the fewer literals it has, the more it is worth. */
function worth(store: Int32Array, clause: number): number {
  const length = store[clause] as number;
  const help = store[clause + 1] as number;
  return length <= 2 || help === FOR_GOOD ? FOR_GOOD : help / length;
}

function swapLiterals(store: Int32Array, one: number, other: number): void {
  const side = store[one] as number;
  const value = store[one + 1] as number;
  store[one] = store[other] as number;
  store[one + 1] = store[other + 1] as number;
  store[other] = side;
  store[other + 1] = value;
}

function doubled(list: Int32Array): Int32Array {
  const larger = new Int32Array(list.length * 2);
  larger.set(list);
  return larger;
}

import { type Bounds, WHY } from "./bounds.ts";

/** A bound that must be true: `[side >= value]`. */
export interface Literal {
  readonly side: number;
  readonly value: number;
}

/** `to >= from + least` between variables; where there is a condition, only while it is true. */
export interface Difference {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly condition: Literal | null;
}

/** Stands for "no condition": a side that no bound has. */
const ALWAYS = -1;

/**
 * Difference constraints, each kept as two arcs between sides: raising the tail of one raises its head. Arc `2 * k`
 * lifts the lower bound of `to`, arc `2 * k + 1` lowers the upper bound of `from`.
 */
export class Arcs {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly least: Int32Array;
  readonly conditionSide: Int32Array;
  readonly conditionValue: Int32Array;
  readonly #leaving: Lists;
  readonly #conditioned: Lists;

  /** @param sides how many sides the bounds have */
  constructor(differences: readonly Difference[], sides: number) {
    const arcs = differences.flatMap(({ from, to, least, condition }) => [
      { from: 2 * from, to: 2 * to, least, condition },
      { from: 2 * to + 1, to: 2 * from + 1, least, condition },
    ]);
    this.from = Int32Array.from(arcs, (arc) => arc.from);
    this.to = Int32Array.from(arcs, (arc) => arc.to);
    this.least = Int32Array.from(arcs, (arc) => arc.least);
    this.conditionSide = Int32Array.from(arcs, (arc) => arc.condition?.side ?? ALWAYS);
    this.conditionValue = Int32Array.from(arcs, (arc) => arc.condition?.value ?? 0);
    this.#leaving = listsBy(this.from, sides);
    this.#conditioned = listsBy(this.conditionSide, sides);
  }

  /** Draws every conclusion from the newest bound of one side. @returns false on a clash */
  propagate(bounds: Bounds, side: number): boolean {
    const { first, items } = this.#leaving;
    const last = first[side + 1] as number;
    for (let place = first[side] as number; place < last; place++) {
      if (!this.#follow(bounds, items[place] as number)) return false;
    }
    return this.#open(bounds, side);
  }

  /** Follows the arcs whose condition has just become true. */
  #open(bounds: Bounds, side: number): boolean {
    const { first, items } = this.#conditioned;
    const last = first[side + 1] as number;
    for (let place = first[side] as number; place < last; place++) {
      const arc = items[place] as number;
      if (!bounds.isTrue(side, this.conditionValue[arc] as number)) continue;
      if (!this.#push(bounds, arc)) return false;
    }
    return true;
  }

  /** Lets an arc push its head, or refuses its condition when its head cannot give way. */
  #follow(bounds: Bounds, arc: number): boolean {
    const side = this.conditionSide[arc] as number;
    if (side === ALWAYS) return this.#push(bounds, arc);
    const value = this.conditionValue[arc] as number;
    if (bounds.isTrue(side, value)) return this.#push(bounds, arc);
    const pushed = (bounds.now[this.from[arc] as number] as number) + (this.least[arc] as number);
    if (pushed + (bounds.now[(this.to[arc] as number) ^ 1] as number) <= 0) return true;
    return bounds.raise(side ^ 1, 1 - value, WHY.CONDITION, arc);
  }

  #push(bounds: Bounds, arc: number): boolean {
    const pushed = (bounds.now[this.from[arc] as number] as number) + (this.least[arc] as number);
    return bounds.raise(this.to[arc] as number, pushed, WHY.ARC, arc);
  }
}

/** Items in lists one behind the other: list `k` is `items[first[k]]` to before `items[first[k + 1]]`. */
interface Lists {
  readonly first: Int32Array;
  readonly items: Int32Array;
}

/** Puts item `i` into list `keys[i]`; negative keys are left out. */
function listsBy(keys: Int32Array, count: number): Lists {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (const [item, key] of keys.entries()) lists[key]?.push(item);
  const first = new Int32Array(count + 1);
  for (const [key, list] of lists.entries()) first[key + 1] = (first[key] as number) + list.length;
  return { first, items: Int32Array.from(lists.flat()) };
}

import { Arcs, type Difference, type Literal } from "./arcs.ts";
import type { Model, Rule, Way } from "./model.ts";

/** A model in the making: variables with bounds, and what holds between them. */
export class ModelDraft {
  readonly #first: number[] = [];
  readonly #differences: Difference[] = [];
  readonly #clauses: (readonly Literal[])[] = [];
  readonly #ways: Way[] = [];

  /** Adds a variable within bounds. */
  add(least: number, most: number): number {
    return this.#first.push(least, -most) / 2 - 1;
  }

  least(variable: number): number {
    return this.#first[2 * variable] as number;
  }

  most(variable: number): number {
    return -(this.#first[2 * variable + 1] as number);
  }

  /** Narrows the bounds a variable has at the beginning. */
  narrow(variable: number, least: number, most: number): void {
    this.#first[2 * variable] = Math.max(this.least(variable), least);
    this.#first[2 * variable + 1] = Math.max(-this.most(variable), -most);
  }

  /** Whether a variable's bounds leave it nothing. */
  get isEmpty(): boolean {
    return this.#first.some((bound, side) => bound + (this.#first[side ^ 1] as number) > 0);
  }

  /** `to >= from + least`, always or only under a condition. */
  keep(from: number, to: number, least: number, condition: Literal | null = null): void {
    // What the bounds say already needs no arc.
    if (this.least(to) >= this.most(from) + least) return;
    this.#differences.push({ from, to, least, condition });
  }

  /** One of two literals must be true. */
  either(one: Literal, other: Literal): void {
    this.#clauses.push([one, other]);
  }

  /** Adds a variable that is 1 when `other` comes after `one`. */
  addWay(one: number, other: number): number {
    const variable = this.add(0, 1);
    this.#ways.push({ variable, one, other });
    return variable;
  }

  /** @param times how many variables, from the first, are times to be put in order */
  finish(times: number, goal: number, rules: readonly Rule[]): Model {
    return {
      first: this.#first,
      times,
      ways: this.#ways,
      goal,
      arcs: new Arcs(this.#differences, this.#first.length),
      clauses: this.#clauses,
      rules,
    };
  }
}

/** The literal that a yes-or-no variable is 1, or that it is 0. */
export function isOne(variable: number): Literal {
  return { side: 2 * variable, value: 1 };
}

export function isZero(variable: number): Literal {
  return { side: 2 * variable + 1, value: 0 };
}

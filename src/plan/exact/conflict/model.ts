import type { Arcs, Literal } from "./arcs.ts";
import type { Bounds } from "./bounds.ts";

/** What the search reads: variables within bounds, and all that holds between them. One variable is to be least. */
export interface Model {
  /** Bounds at the beginning, by side. */
  readonly first: readonly number[];
  /** Variables from 0 up to this one are times that the search puts in their order. */
  readonly times: number;
  readonly ways: readonly Way[];
  readonly goal: number;
  readonly arcs: Arcs;
  /** Of the literals of each, one must be true. */
  readonly clauses: readonly (readonly Literal[])[];
  readonly rules: readonly Rule[];
}

/** A variable that is 1 when `other` comes after `one`, and 0 when before. */
export interface Way {
  readonly variable: number;
  readonly one: number;
  readonly other: number;
}

/** A rule that draws all its conclusions from the bounds of some variables. */
export interface Rule {
  readonly variables: Iterable<number>;
  /** @returns false on a clash */
  propagate(bounds: Bounds): boolean;
}

import type { StartLag } from "../project.ts";

/** Stands for "no path": far below any path, and still safe to add to another. */
export const NO_PATH = -(2 ** 28);

/** Lengths of the longest paths between all events of a temporal network, row by row. */
export interface LongestPaths {
  readonly size: number;
  /** `length[from * size + to]`: the least time from one event to another, or NO_PATH. */
  readonly length: Int32Array;
}

/**
 * Longest paths between all pairs of events (Floyd 1962, Warshall 1962).
 *
 * @returns null when a cycle has positive length: then no times satisfy the lags
 */
export function findLongestPaths(size: number, lags: readonly StartLag[]): LongestPaths | null {
  const length = new Int32Array(size * size).fill(NO_PATH);
  for (let event = 0; event < size; event++) length[event * size + event] = 0;
  for (const { from, to, least } of lags) {
    length[from * size + to] = Math.max(length[from * size + to] as number, least);
  }
  for (let via = 0; via < size; via++) joinPaths(length, size, via, via, 0);
  for (let event = 0; event < size; event++) {
    if ((length[event * size + event] as number) > 0) return null;
  }
  return { size, length };
}

/**
 * Puts one more lag into the network, in time quadratic in its size.
 *
 * @returns false when it closes a cycle of positive length; the paths are then of no more use
 */
export function addLag({ size, length }: LongestPaths, { from, to, least }: StartLag): boolean {
  if (least + (length[to * size + from] as number) > 0) return false;
  if (least > (length[from * size + to] as number)) joinPaths(length, size, from, to, least);
  return true;
}

/** Lengthens every path that gains by going to `from`, over an arc of `least`, and on from `to`. */
function joinPaths(length: Int32Array, size: number, from: number, to: number, least: number): void {
  for (let start = 0; start < size; start++) {
    const head = length[start * size + from] as number;
    if (head === NO_PATH) continue;
    for (let end = 0; end < size; end++) {
      const tail = length[to * size + end] as number;
      if (tail === NO_PATH) continue;
      const through = head + least + tail;
      if (through > (length[start * size + end] as number)) length[start * size + end] = through;
    }
  }
}

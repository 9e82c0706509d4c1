import type { TouchedPairs } from "./touched-pairs.ts";

/** "No path": below every length, and so far that two of them can be added. */
export const NO_PATH = -(1 << 28);

/**
 * The longest paths between all nodes of a network of difference constraints `x(to) >= x(from) + length`, kept closed
 * under each constraint added. Adding costs the square of the nodes at most (Cotton and Maler, Fast and flexible
 * difference constraint propagation for DPLL(T), SAT 2006, for the idea of updating instead of solving anew).
 */
export class LongestPaths {
  readonly nodes: number;
  readonly lengths: Int32Array;
  /** Room to work in, of no meaning between two calls. */
  readonly rising: Int32Array;

  constructor(nodes: number, from?: LongestPaths) {
    this.nodes = nodes;
    this.lengths = from?.lengths.slice() ?? new Int32Array(nodes * nodes).fill(NO_PATH);
    this.rising = from?.rising ?? new Int32Array(nodes);
    if (from === undefined) for (let node = 0; node < nodes; node++) this.lengths[node * nodes + node] = 0;
  }

  copy(): LongestPaths {
    return new LongestPaths(this.nodes, this);
  }

  /** The least difference x(to) - x(from); NO_PATH: any. */
  least(from: number, to: number): number {
    return this.lengths[from * this.nodes + to] as number;
  }

  /**
   * Adds x(to) >= x(from) + length.
   *
   * @param changed takes every pair whose least difference has risen
   * @returns false: the constraints contradict each other, and the matrix is of no more use
   */
  raise(from: number, to: number, length: number, changed: TouchedPairs): boolean {
    const { nodes, lengths, rising } = this;
    const fromRow = from * nodes;
    const toRow = to * nodes;
    if ((lengths[fromRow + to] as number) >= length) return true;
    if (from === to || length + (lengths[toRow + from] as number) > 0) return false;
    // Only what rises seen from `from` itself can rise seen from a node before it.
    let count = 0;
    for (let last = 0; last < nodes; last++) {
      const behind = lengths[toRow + last] as number;
      if (behind > NO_PATH && length + behind > (lengths[fromRow + last] as number)) rising[count++] = last;
    }
    for (let first = 0; first < nodes; first++) {
      const row = first * nodes;
      const before = lengths[row + from] as number;
      if (before <= NO_PATH || before + length <= (lengths[row + to] as number)) continue;
      for (let index = 0; index < count; index++) {
        const last = rising[index] as number;
        const whole = before + length + (lengths[toRow + last] as number);
        if (whole > (lengths[row + last] as number)) {
          lengths[row + last] = whole;
          changed.add(first, last);
        }
      }
    }
    return true;
  }
}

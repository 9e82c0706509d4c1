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

  constructor(nodes: number, lengths?: Int32Array) {
    this.nodes = nodes;
    this.lengths = lengths ?? new Int32Array(nodes * nodes).fill(NO_PATH);
    if (lengths === undefined) for (let node = 0; node < nodes; node++) this.lengths[node * nodes + node] = 0;
  }

  copy(): LongestPaths {
    return new LongestPaths(this.nodes, this.lengths.slice());
  }

  /** The least difference x(to) - x(from); NO_PATH: any. */
  least(from: number, to: number): number {
    return this.lengths[from * this.nodes + to] as number;
  }

  /**
   * Adds x(to) >= x(from) + length.
   *
   * @param changed is told of every pair whose least difference has risen
   * @returns false: the constraints contradict each other, and the matrix is of no more use
   */
  raise(from: number, to: number, length: number, changed: (from: number, to: number) => void): boolean {
    const { nodes, lengths } = this;
    if ((lengths[from * nodes + to] as number) >= length) return true;
    if (from === to || length + (lengths[to * nodes + from] as number) > 0) return false;
    for (let first = 0; first < nodes; first++) {
      const before = lengths[first * nodes + from] as number;
      if (before <= NO_PATH || before + length <= (lengths[first * nodes + to] as number)) continue;
      const row = first * nodes;
      const after = to * nodes;
      for (let last = 0; last < nodes; last++) {
        const behind = lengths[after + last] as number;
        if (behind <= NO_PATH) continue;
        const whole = before + length + behind;
        if (whole > (lengths[row + last] as number)) {
          lengths[row + last] = whole;
          changed(first, last);
        }
      }
    }
    return true;
  }
}

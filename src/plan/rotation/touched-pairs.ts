/**
 * Pairs of nodes of which something is known anew, each once, in the order in which they were first touched: by the time
 * a pair has its turn, most of what is to be known of it has come together.
 */
export class TouchedPairs {
  readonly #nodes: number;
  /** Pairs as `lower node * nodes + higher node`, in a ring that has room for all there are. */
  readonly #ring: Int32Array;
  readonly #waits: Uint8Array;
  #next = 0;
  #count = 0;

  constructor(nodes: number) {
    this.#nodes = nodes;
    this.#ring = new Int32Array(nodes * nodes);
    this.#waits = new Uint8Array(nodes * nodes);
  }

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  add(one: number, other: number): void {
    const pair = one < other ? one * this.#nodes + other : other * this.#nodes + one;
    if (this.#waits[pair] === 1) return;
    this.#waits[pair] = 1;
    const place = this.#next + this.#count++;
    this.#ring[place < this.#ring.length ? place : place - this.#ring.length] = pair;
  }

  /** The pair that waits longest, as in the ring; only where one does. */
  take(): number {
    const pair = this.#ring[this.#next] as number;
    this.#waits[pair] = 0;
    this.#count--;
    this.#next = this.#next + 1 < this.#ring.length ? this.#next + 1 : 0;
    return pair;
  }
}

import type { Minutes } from "../../time/instant.ts";

/**
 * How much of the direction in which prices went counts on, of the look before: without it they swing from one side of what
 * is right to the other. By trial.
 */
const MOMENTUM = 0.7;

/**
 * Something scarce (hands, hooks, room under the limit) and what a minute of it costs at any time: the price that would
 * keep all pieces together from taking more than there is, if each took what is best for it alone. In the terms of the
 * field: the Lagrange multipliers of a renewable resource.
 */
export class PricedTime {
  readonly #every: Minutes;
  /** Minutes that can be taken of each stretch. */
  readonly #most: Minutes;
  readonly #stretches: number;
  #prices: Float64Array;
  /** By stretch: what all minutes before it cost together. */
  readonly #before: Float64Array;
  /** Minutes taken of each stretch. */
  readonly #taken: Float64Array;
  /** By stretch: where the price goes. */
  readonly #direction: Float64Array;
  #kept: Float64Array;

  /**
   * @param span minutes that there are
   * @param every how many of them have the same price
   * @param most how many can be taken of each minute
   */
  constructor(span: Minutes, every: Minutes, most: number) {
    this.#every = every;
    this.#most = most * every;
    this.#stretches = Math.ceil(span / every) + 1;
    this.#prices = new Float64Array(this.#stretches);
    this.#before = new Float64Array(this.#stretches + 1);
    this.#taken = new Float64Array(this.#stretches);
    this.#direction = new Float64Array(this.#stretches);
    this.#kept = new Float64Array(this.#stretches);
  }

  /** What all minutes up to one cost together. */
  upTo(minute: Minutes): number {
    const stretch = Math.min(this.#stretches - 1, Math.floor(minute / this.#every));
    return (
      (this.#before[stretch] as number) + (minute - stretch * this.#every) * (this.#prices[stretch] as number)
    );
  }

  /**
   * Adds to costs what spans of it cost: to each, from a place on, what all from one minute until another costs.
   *
   * @param first the place before which nothing is added
   */
  addSpans(from: Int32Array, until: Int32Array, first: number, costs: Float64Array): void {
    const prices = this.#prices;
    const before = this.#before;
    const every = this.#every;
    // Prices change at the ends of stretches: there both sides tell the same, so that a product will do for a quotient.
    const share = 1 / every;
    const last = this.#stretches - 1;
    for (let place = first; place < costs.length; place++) {
      const begin = from[place] as Minutes;
      const end = until[place] as Minutes;
      const one = Math.min(last, Math.floor(begin * share));
      const other = Math.min(last, Math.floor(end * share));
      const upToEnd = (before[other] as number) + (end - other * every) * (prices[other] as number);
      const upToBegin = (before[one] as number) + (begin - one * every) * (prices[one] as number);
      costs[place] = (costs[place] as number) + upToEnd - upToBegin;
    }
  }

  /** What all of it costs that can be taken. */
  get worth(): number {
    return ((this.#before[this.#stretches] as number) * this.#most) / this.#every;
  }

  /** What all of it costs that can be taken up to a minute. */
  worthUpTo(minute: Minutes): number {
    return (this.upTo(minute) * this.#most) / this.#every;
  }

  /** Nothing of it is taken any more. */
  clear(): void {
    this.#taken.fill(0);
  }

  /** Takes so many of each minute of a span. */
  take(from: Minutes, until: Minutes, many: number): void {
    for (let stretch = Math.floor(from / this.#every); stretch < this.#stretches; stretch++) {
      const begins = stretch * this.#every;
      if (begins >= until) return;
      const minutes = Math.min(begins + this.#every, until) - Math.max(begins, from);
      this.#taken[stretch] = (this.#taken[stretch] as number) + many * minutes;
    }
  }

  /**
   * Turns prices to where they should go: up where too much is taken, down where too little is, and somewhat on as before.
   *
   * @returns the squares of how far a step of 1 would change them
   */
  steer(): number {
    let sum = 0;
    for (let stretch = 0; stretch < this.#stretches; stretch++) {
      const excess = (this.#taken[stretch] as number) - this.#most;
      const direction = excess + MOMENTUM * (this.#direction[stretch] as number);
      this.#direction[stretch] = direction;
      if (direction > 0 || (this.#prices[stretch] as number) > 0) sum += direction ** 2;
    }
    return sum;
  }

  /** Changes prices by a step to where they were turned last. */
  adjust(step: number): void {
    for (let stretch = 0; stretch < this.#stretches; stretch++) {
      const price = (this.#prices[stretch] as number) + step * (this.#direction[stretch] as number);
      this.#prices[stretch] = Math.max(0, price);
    }
    this.#sumUp();
  }

  #sumUp(): void {
    let sum = 0;
    for (let stretch = 0; stretch < this.#stretches; stretch++) {
      this.#before[stretch] = sum;
      sum += this.#every * (this.#prices[stretch] as number);
    }
    this.#before[this.#stretches] = sum;
  }

  /** Keeps the prices as they are, to come back to. */
  keep(): void {
    this.#kept = this.#prices.slice();
  }

  /** Has the prices again that were kept last, so many times as high. */
  restore(times: number): void {
    this.#prices = this.#kept.map((price) => times * price);
    this.#sumUp();
  }
}

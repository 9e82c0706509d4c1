import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { type AirLine, type AirReading, airBetween } from "./air-line.ts";
import { type Curing, cureRateOf } from "./cure-rate.ts";

/** Longest stretch over which the rate is taken as the mean of its two ends. */
const STRETCH = 15 * MINUTE;

/** How far ahead the air is followed: a coat that does not cure by then never does, as far as anybody can say. */
const FARTHEST = 60 * 24 * 60 * MINUTE;

/**
 * How far a kind of coat has come in one line of air, summed once and then only looked up: minutes by the sheet since
 * the line begins, at the ends of stretches so short that between them they rise in a straight line. Later stretches
 * are added as they are asked for.
 */
export class CureSum {
  readonly #rateIn: (air: Air) => number;
  readonly #lowest: number;
  #line: AirLine;
  /** The air expected on the line after its last reading. */
  #ahead: (at: Instant) => Air;
  /** Ends of stretches, rising; the first is where the line begins: of the air before it nothing is known. */
  readonly #at: Instant[];
  /** Minutes by the sheet up to each. */
  readonly #sum: Minutes[] = [0];
  /** The air at the last end. */
  #air: Air;
  #rate: number;
  /** Readings that lie at or before the last end. */
  #passed: number;
  /** Entries that rest on readings alone; those after them on what is expected. */
  #read: number;

  constructor(curing: Curing, line: AirLine, ahead: (at: Instant) => Air) {
    const [first] = line.readings;
    const begins = first !== undefined && first.at <= line.since ? first : null;
    this.#rateIn = cureRateOf(curing);
    this.#lowest = curing.lowestCelsius ?? Number.NEGATIVE_INFINITY;
    this.#line = line;
    this.#ahead = ahead;
    this.#at = [begins?.at ?? line.since];
    this.#air = begins ?? ahead(line.since);
    this.#rate = this.#rateIn(this.#air);
    this.#passed = begins === null ? 0 : 1;
    this.#read = 1;
  }

  /**
   * Goes on with a line that goes on from its own (`goesOnFrom`): what was summed over readings stays, what was only
   * expected is dropped.
   */
  goOnWith(line: AirLine, ahead: (at: Instant) => Air): void {
    if (this.#at.length > this.#read) {
      this.#at.length = this.#read;
      this.#sum.length = this.#read;
      this.#air = line.readings[this.#passed - 1] ?? ahead(line.since);
      this.#rate = this.#rateIn(this.#air);
    }
    this.#line = line;
    this.#ahead = ahead;
  }

  /** Where the line begins. */
  get start(): Instant {
    return entry(this.#at, 0);
  }

  /** Minutes by the sheet from the start of the line to a moment in it. */
  upTo(moment: Instant): Minutes {
    while (this.#end < moment) this.#addStretch();
    return between(moment, this.#at, this.#sum);
  }

  /**
   * The first moment at which so many minutes by the sheet have come together; Infinity: not within sixty days after
   * the last reading or the moment asked from.
   */
  reach(sum: Minutes, from: Instant): Instant {
    return this.#comesTo(sum, from) ? between(sum, this.#sum, this.#at) : Number.POSITIVE_INFINITY;
  }

  /** `reach` of so many minutes by the sheet more than at each of these moments, which rise: in one sweep. */
  reachEach(minutes: Minutes, moments: readonly Instant[]): Instant[] {
    const [ats, sums] = [this.#at, this.#sum];
    const reached: Instant[] = [];
    let [begun, ended] = [0, 0];
    for (const moment of moments) {
      while (this.#end < moment) this.#addStretch();
      while ((ats[begun] as number) < moment) begun++;
      const sum = valueAt(begun, moment, ats, sums) + minutes;
      const comes = (sums[sums.length - 1] as number) >= sum || this.#comesTo(sum, moment);
      while (comes && (sums[ended] as number) < sum) ended++;
      reached.push(comes ? valueAt(ended, sum, sums, ats) : Number.POSITIVE_INFINITY);
    }
    return reached;
  }

  #comesTo(sum: Minutes, from: Instant): boolean {
    const farthest = Math.max(this.#line.readings.at(-1)?.at ?? from, from) + FARTHEST;
    while (entry(this.#sum, this.#sum.length - 1) < sum) {
      if (this.#end >= farthest) return false;
      this.#addStretch();
    }
    return true;
  }

  get #end(): Instant {
    return entry(this.#at, this.#at.length - 1);
  }

  #addStretch(): void {
    const next = this.#line.readings[this.#passed];
    const start = this.#end;
    const end = Math.min(start + STRETCH, next?.at ?? Number.POSITIVE_INFINITY);
    const air = this.#airAt(end, next);
    const lowest = this.#lowest;
    if (this.#air.celsius < lowest !== air.celsius < lowest) {
      const share = (lowest - this.#air.celsius) / (air.celsius - this.#air.celsius);
      this.#push(start + share * (end - start), { ...air, celsius: lowest });
    }
    this.#push(end, air);
    if (end !== next?.at) return;
    this.#passed++;
    this.#read = this.#at.length;
  }

  #push(end: Instant, air: Air): void {
    const rate = this.#rateIn(air);
    const last = this.#at.length - 1;
    // A stretch that ends or begins just at the lowest temperature lies below it where its other end does.
    const mean = this.#rate > 0 && rate > 0 ? (this.#rate + rate) / 2 : 0;
    this.#sum.push(entry(this.#sum, last) + ((end - entry(this.#at, last)) / MINUTE) * mean);
    this.#at.push(end);
    this.#air = air;
    this.#rate = rate;
  }

  #airAt(moment: Instant, next: AirReading | undefined): Air {
    const before = this.#line.readings[this.#passed - 1];
    if (next?.at === moment) return next;
    if (next === undefined || before === undefined) return this.#ahead(moment);
    return airBetween(before, next, moment);
  }
}

/** An entry of a list that is never empty, by a place in it. */
function entry(entries: readonly number[], place: number): number {
  return entries[place] as number;
}

/** The value over `x` of the line through the points of two rising lists; where `xs` stands still, the first. */
function between(x: number, xs: readonly number[], ys: readonly number[]): number {
  let low = 0;
  let high = xs.length - 1;
  // Read without a call: it is looked for so often that a cold start would show it.
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) < x) low = middle + 1;
    else high = middle;
  }
  return valueAt(low, x, xs, ys);
}

/** The value over `x`, which lies before the entry at a place and not before the one before that. */
function valueAt(place: number, x: number, xs: readonly number[], ys: readonly number[]): number {
  if (place === 0) return entry(ys, 0);
  const from = entry(xs, place - 1);
  const share = (x - from) / (entry(xs, place) - from);
  return entry(ys, place - 1) + share * (entry(ys, place) - entry(ys, place - 1));
}

import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { type AirLine, airBetween, firstFrom } from "./air-line.ts";
import type { CureLaw } from "./cure-rate.ts";

/** Longest stretch over which the rate is taken as the mean of its two ends. */
const STRETCH = 15 * MINUTE;

const DAY = 24 * 60 * MINUTE;

/** How far ahead the air is followed: a coat that does not cure by then never does, as far as anybody can say. */
const FARTHEST = 60 * DAY;

/** By so little sums of the same stretches may differ that were begun at other ends. */
const ALIKE: Minutes = 1e-9;

/** How far a kind of coat comes in the air of one day, at the ends of stretches in which it comes on in a straight line. */
interface CureDay {
  /** Rising; the first is the beginning of the day, or of the line. */
  readonly at: Instant[];
  /** Minutes by the sheet from the first up to each. */
  readonly sum: Minutes[];
  /** The last of each: the end of the day, and how far the coat comes in it. */
  readonly ends: Instant;
  readonly whole: Minutes;
}

/**
 * How far a kind of coat comes in one line of air. Each day (of UTC) is summed when it is first asked for, and then only
 * looked up: of a year of readings only the days cost anything in which such a coat was drying.
 */
export class CureSum {
  readonly #rateIn: (air: Air) => number;
  readonly #lowest: number;
  readonly #days = new Map<number, CureDay>();
  #line: AirLine;
  /** The air expected on the line after its last reading. */
  #ahead: (at: Instant) => Air;

  constructor({ rateIn, lowest }: CureLaw, line: AirLine, ahead: (at: Instant) => Air) {
    this.#rateIn = rateIn;
    this.#lowest = lowest;
    this.#line = line;
    this.#ahead = ahead;
  }

  /** Goes on with a line that goes on from its own (`goesOnFrom`): days that rest on readings alone stay as summed. */
  goOnWith(line: AirLine, ahead: (at: Instant) => Air): void {
    const last = this.#lastRead;
    for (const day of this.#days.keys()) if (day * DAY + DAY > last) this.#days.delete(day);
    this.#line = line;
    this.#ahead = ahead;
  }

  /** Where the line begins: of the air before it nothing is known. */
  get start(): Instant {
    return this.#line.since;
  }

  /** Minutes by the sheet from a moment in the line to a later one. */
  spent(from: Instant, to: Instant): Minutes {
    const first = dayOf(from);
    const last = dayOf(to);
    let sum = upTo(to, this.#day(last)) - upTo(from, this.#day(first));
    for (let day = first; day < last; day++) sum += this.#day(day).whole;
    return sum;
  }

  /**
   * The first moment from one in the line on at which so many minutes by the sheet have come together; Infinity: not
   * within sixty days after it and after the last reading.
   */
  reach(minutes: Minutes, from: Instant): Instant {
    let number = dayOf(from);
    let day = this.#day(number);
    let left = upTo(from, day) + minutes;
    const farthest = Math.max(this.#lastRead, from) + FARTHEST;
    while (left > day.whole + ALIKE) {
      if (day.ends >= farthest) return Number.POSITIVE_INFINITY;
      left -= day.whole;
      day = this.#day(++number);
    }
    const inDay = Math.min(left, day.whole);
    return Math.max(from, valueAt(placeOf(inDay, day.sum), inDay, day.sum, day.at));
  }

  /** `reach` from each of these moments, which rise: in one sweep of two places, where it begins and where it ends. */
  reachEach(minutes: Minutes, moments: readonly Instant[]): Instant[] {
    const reached = new Array<Instant>(moments.length);
    // By day, minutes of the days before it, place in it.
    let [begunOn, begunBefore, begun] = [dayOf(moments[0] ?? 0), 0, 0];
    let [endedOn, endedBefore, ended] = [begunOn, 0, 0];
    let [beginning, ending] = [this.#day(begunOn), this.#day(endedOn)];
    const lastRead = this.#lastRead;
    for (let index = 0; index < moments.length; index++) {
      const moment = moments[index] as Instant;
      while (beginning.ends < moment) {
        begunBefore += beginning.whole;
        beginning = this.#day(++begunOn);
        begun = 0;
      }
      while ((beginning.at[begun] as number) < moment) begun++;
      const sum = begunBefore + valueAt(begun, moment, beginning.at, beginning.sum) + minutes;
      const farthest = Math.max(lastRead, moment) + FARTHEST;
      while (endedBefore + ending.whole + ALIKE < sum && ending.ends < farthest) {
        endedBefore += ending.whole;
        ending = this.#day(++endedOn);
        ended = 0;
      }
      const inDay = Math.min(sum - endedBefore, ending.whole);
      while ((ending.sum[ended] as number) < inDay) ended++;
      reached[index] =
        endedBefore + ending.whole + ALIKE < sum
          ? Number.POSITIVE_INFINITY
          : Math.max(moment, valueAt(ended, inDay, ending.sum, ending.at));
    }
    return reached;
  }

  /** The beginning of the line where nothing was read. */
  get #lastRead(): Instant {
    return this.#line.readings.at(-1)?.at ?? this.start;
  }

  #day(number: number): CureDay {
    const day = this.#days.get(number) ?? this.#sumDay(number * DAY);
    this.#days.set(number, day);
    return day;
  }

  #sumDay(midnight: Instant): CureDay {
    const rateIn = this.#rateIn;
    const lowest = this.#lowest;
    const { readings } = this.#line;
    const begins = Math.max(midnight, this.start);
    const ends = midnight + DAY;
    const at = [begins];
    const sum = [0];
    let next = firstFrom(readings, begins);
    let moment = begins;
    let air = this.#airAt(begins, next);
    let rate = rateIn(air);
    let total = 0;
    const add = (end: Instant, rateThere: number) => {
      // A stretch that ends or begins just at the lowest temperature lies below it where its other end does.
      if (rate > 0 && rateThere > 0) total += ((end - moment) / MINUTE) * ((rate + rateThere) / 2);
      at.push(end);
      sum.push(total);
      moment = end;
      rate = rateThere;
    };
    while (moment < ends) {
      if (readings[next]?.at === moment) next++;
      const end = Math.min(moment + STRETCH, readings[next]?.at ?? ends, ends);
      const there = this.#airAt(end, next);
      if (air.celsius < lowest !== there.celsius < lowest) {
        const share = (lowest - air.celsius) / (there.celsius - air.celsius);
        add(moment + share * (end - moment), rateIn({ ...there, celsius: lowest }));
      }
      add(end, rateIn(there));
      air = there;
    }
    return { at, sum, ends: moment, whole: total };
  }

  /** @param next place of the first reading at the moment or after it */
  #airAt(moment: Instant, next: number): Air {
    const { readings } = this.#line;
    const after = readings[next];
    if (after?.at === moment) return after;
    const before = readings[next - 1];
    if (before === undefined || after === undefined) return this.#ahead(moment);
    return airBetween(before, after, moment);
  }
}

const dayOf = (moment: Instant): number => Math.floor(moment / DAY);

/** Minutes by the sheet from the beginning of a day to a moment in it. */
const upTo = (moment: Instant, { at, sum }: CureDay): Minutes =>
  valueAt(placeOf(moment, at), moment, at, sum);

/** The first place in a rising list that is not before a value of its span. */
function placeOf(value: number, entries: readonly number[]): number {
  let low = 0;
  let high = entries.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The value over `x` of the line through the points of two rising lists, at the first place that is not before it. */
function valueAt(place: number, x: number, xs: readonly number[], ys: readonly number[]): number {
  if (place === 0) return ys[0] as number;
  const from = xs[place - 1] as number;
  const base = ys[place - 1] as number;
  return base + ((x - from) / ((xs[place] as number) - from)) * ((ys[place] as number) - base);
}

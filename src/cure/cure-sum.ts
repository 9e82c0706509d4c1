import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { type AirDays, DAY } from "./air-days.ts";
import type { CureLaw } from "./cure-rate.ts";

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
  readonly #law: CureLaw;
  readonly #days = new Map<number, CureDay>();
  #air: AirDays;

  constructor(law: CureLaw, air: AirDays) {
    this.#law = law;
    this.#air = air;
  }

  /** Goes on with a line that goes on from its own (`goesOnFrom`): days that rest on readings alone stay as summed. */
  goOnWith(air: AirDays): void {
    for (const day of this.#days.keys()) if (!this.#air.isRead(day)) this.#days.delete(day);
    this.#air = air;
  }

  /** Where the line begins: of the air before it nothing is known. */
  get start(): Instant {
    return this.#air.line.since;
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
    const farthest = Math.max(this.#air.lastRead, from) + FARTHEST;
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
    const lastRead = this.#air.lastRead;
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

  #day(number: number): CureDay {
    const day = this.#days.get(number) ?? this.#sumDay(number);
    this.#days.set(number, day);
    return day;
  }

  #sumDay(number: number): CureDay {
    const { rateIn, lowest } = this.#law;
    const day = this.#air.day(number);
    let moment = day.at[0] as Instant;
    let air = day.airs[0] as Air;
    let rate = rateIn(air);
    let whole = 0;
    const at = [moment];
    const sum = [whole];
    const add = (end: Instant, rateThere: number) => {
      // A stretch that ends or begins just at the lowest temperature lies below it where its other end does.
      if (rate > 0 && rateThere > 0) whole += ((end - moment) / MINUTE) * ((rate + rateThere) / 2);
      at.push(end);
      sum.push(whole);
      moment = end;
      rate = rateThere;
    };
    for (let index = 1; index < day.at.length; index++) {
      const end = day.at[index] as Instant;
      const there = day.airs[index] as Air;
      if (air.celsius < lowest !== there.celsius < lowest) {
        const share = (lowest - air.celsius) / (there.celsius - air.celsius);
        add(moment + share * (end - moment), rateIn({ ...there, celsius: lowest }));
      }
      add(end, rateIn(there));
      air = there;
    }
    return { at, sum, ends: moment, whole };
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

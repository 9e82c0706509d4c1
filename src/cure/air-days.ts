import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { expectAir } from "./air-ahead.ts";
import { type AirLine, airBetween, firstFrom } from "./air-line.ts";

/** Longest stretch over which how fast a coat dries is taken as the mean of its two ends. */
const STRETCH = 15 * MINUTE;

export const DAY = 24 * 60 * MINUTE;

/** The air of one day (of UTC) of a line, at the ends of stretches of it, every reading among them. */
interface AirDay {
  /** Rising; the first is the beginning of the day, or of the line. */
  readonly at: readonly Instant[];
  /** The air at each. */
  readonly airs: readonly Air[];
}

/** The air of a line day by day, each looked at when it is first asked for: all kinds of coat that hang in it go by the same. */
export class AirDays {
  readonly line: AirLine;
  /** The air expected where it lies between no two readings. */
  readonly expected: (at: Instant) => Air;
  readonly #days = new Map<number, AirDay>();

  /** @param before those of a line that this one goes on from (`goesOnFrom`): days that rest on readings alone stay */
  constructor(line: AirLine, before: AirDays | null = null) {
    this.line = line;
    this.expected = expectAir(line.ahead);
    if (before === null) return;
    for (const [number, day] of before.#days) if (before.isRead(number)) this.#days.set(number, day);
  }

  /** The moment of the last reading; the beginning of the line where nothing was read. */
  get lastRead(): Instant {
    return this.line.readings.at(-1)?.at ?? this.line.since;
  }

  /** Whether all air of a day lies between readings. */
  isRead(number: number): boolean {
    const { readings, since } = this.line;
    const [first] = readings;
    const begins = Math.max(number * DAY, since);
    return first !== undefined && first.at <= begins && number * DAY + DAY <= this.lastRead;
  }

  /** @param number of the day since 1970; it ends after the line begins */
  day(number: number): AirDay {
    const day = this.#days.get(number) ?? this.#look(number * DAY);
    this.#days.set(number, day);
    return day;
  }

  #look(midnight: Instant): AirDay {
    const { readings, since } = this.line;
    const ends = midnight + DAY;
    let moment = Math.max(midnight, since);
    let next = firstFrom(readings, moment);
    const at = [moment];
    const airs = [this.#airAt(moment, next)];
    while (moment < ends) {
      if (readings[next]?.at === moment) next++;
      moment = Math.min(moment + STRETCH, readings[next]?.at ?? ends, ends);
      at.push(moment);
      airs.push(this.#airAt(moment, next));
    }
    return { at, airs };
  }

  /** @param next place of the first reading at the moment or after it */
  #airAt(moment: Instant, next: number): Air {
    const { readings } = this.line;
    const after = readings[next];
    if (after?.at === moment) return after;
    const before = readings[next - 1];
    if (before === undefined || after === undefined) return this.expected(moment);
    return airBetween(before, after, moment);
  }
}

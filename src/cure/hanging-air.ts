import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { AirLine } from "./air-line.ts";
import type { Curing } from "./cure-rate.ts";
import { CureSum } from "./cure-sum.ts";

/** The air that a piece hangs in, as far as it matters to its coats. */
export interface HangingAir {
  /**
   * When a coat that hangs from `from` on has come so many minutes by its sheet, up to the next whole minute; Infinity:
   * never, as far as can be seen.
   */
  reach(curing: Curing, from: Instant, minutes: Minutes): Instant;
  /** How many minutes by its sheet it comes in a span of time. */
  spent(curing: Curing, from: Instant, to: Instant): Minutes;
}

/** Where nothing is known of the air: that of the sheet. */
export const SHEET_AIR: HangingAir = {
  reach: (_curing, from, minutes) => after(from, minutes),
  spent: (_curing, from, to) => Math.max(0, to - from) / MINUTE,
};

/** The lines of air of a shop with what coats have come to in them, each summed once. */
export class ShopAir {
  readonly #lines: ReadonlyMap<string, AirLine>;
  readonly #sums = new Map<string, CureSum>();

  /** @param lines by place; "" is the shop's own, for places that have none */
  constructor(lines: ReadonlyMap<string, AirLine>) {
    this.#lines = lines;
  }

  /**
   * The air of a piece by where it hung.
   *
   * @param moves rising in time: from when on it hung where; before the first it was where the first says
   */
  of(moves: readonly Move[]): HangingAir {
    if (this.#lines.size === 0) return SHEET_AIR;
    return {
      reach: (curing, from, minutes) => {
        let left = minutes;
        for (const { place, starts, ends } of staysFrom(moves, from)) {
          const here = this.#spent(curing, place, starts, ends);
          if (here >= left) return wholeMinute(this.#reach(curing, place, starts, left));
          left -= here;
        }
        return Number.POSITIVE_INFINITY;
      },
      spent: (curing, from, to) =>
        staysFrom(moves, from).reduce(
          (sum, { place, starts, ends }) =>
            starts < to ? sum + this.#spent(curing, place, starts, Math.min(ends, to)) : sum,
          0,
        ),
    };
  }

  /** Minutes by the sheet in a stay; of one without end, without end. */
  #spent(curing: Curing, place: string, from: Instant, to: Instant): Minutes {
    const sum = this.#sumOf(curing, place);
    if (to === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
    if (sum === null) return (to - from) / MINUTE;
    const before = Math.max(0, Math.min(to, sum.start) - from) / MINUTE;
    return before + (to > sum.start ? sum.upTo(to) - sum.upTo(Math.max(from, sum.start)) : 0);
  }

  #reach(curing: Curing, place: string, from: Instant, minutes: Minutes): Instant {
    const sum = this.#sumOf(curing, place);
    if (sum === null || after(from, minutes) <= sum.start) return after(from, minutes);
    const before = Math.max(0, sum.start - from) / MINUTE;
    const counted = Math.max(from, sum.start);
    return sum.reach(sum.upTo(counted) + minutes - before, counted);
  }

  /** Null: nothing is known of the air there. */
  #sumOf(curing: Curing, place: string): CureSum | null {
    const line = this.#lines.get(place) ?? this.#lines.get("");
    if (line === undefined) return null;
    const { celsius, humidityPercent } = curing.sheetAir;
    const { curesBy, lowestCelsius, activationEnergy } = curing;
    const key = [
      this.#lines.has(place) ? place : "",
      curesBy,
      celsius,
      humidityPercent,
      lowestCelsius,
      activationEnergy,
    ].join("|");
    const known = this.#sums.get(key) ?? new CureSum(curing, line);
    this.#sums.set(key, known);
    return known;
  }
}

/** From a moment on a piece hung at a place. */
export interface Move {
  readonly at: Instant;
  readonly place: string;
}

function staysFrom(moves: readonly Move[], from: Instant) {
  return moves.flatMap(({ at, place }, index) => {
    const ends = moves[index + 1]?.at ?? Number.POSITIVE_INFINITY;
    const starts = index === 0 ? from : Math.max(at, from);
    return ends <= from ? [] : [{ place, starts, ends }];
  });
}

const wholeMinute = (moment: Instant): Instant => Math.ceil(moment / MINUTE - 1e-6) * MINUTE;

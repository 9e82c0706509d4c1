import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { type AirBounds, boundsAhead, inWeather, WEATHERS } from "./air-ahead.ts";
import { AirDays } from "./air-days.ts";
import { type AirLine, airAt, firstFrom, goesOnFrom, type KnownAir } from "./air-line.ts";
import { type Curing, cureLaw } from "./cure-rate.ts";
import { CureSum } from "./cure-sum.ts";

/** The air that a piece hangs in, as far as it matters to its coats. */
export interface HangingAir {
  /**
   * When a coat that hangs from `from` on has come so many minutes by its sheet, in whole minutes from then; Infinity:
   * never, as far as can be seen.
   */
  reach(curing: Curing, from: Instant, minutes: Minutes): Instant;
  /** How many minutes by its sheet it comes in a span of time. */
  spent(curing: Curing, from: Instant, to: Instant): Minutes;
  /** The same should the weather be other than expected, each way that is likely. */
  otherwise(): readonly HangingAir[];
}

/** Where nothing is known of the air: that of the sheet. */
export const SHEET_AIR: HangingAir = {
  reach: (_curing, from, minutes) => after(from, minutes),
  spent: (_curing, from, to) => Math.max(0, to - from) / MINUTE,
  otherwise: () => [],
};

/** For what hangs at no place that is named: the shop's own air. */
export const NO_PLACE = "";

/** The lines of air of a shop with what coats have come to in them, each summed once. */
export class ShopAir {
  readonly #lines: ReadonlyMap<string, AirLine>;
  /** By line: its air, which all coats in it ask for. */
  readonly #air = new Map<AirLine, AirDays>();
  readonly #sums = new Map<string, CureSum>();
  /** The same by the sheet itself, which is the quicker to look up, and by place. */
  readonly #bySheet = new Map<Curing, Map<string, CureSum>>();
  #others: readonly ShopAir[] | null = null;

  /**
   * @param lines by place; `NO_PLACE` is the shop's own, for places that have none
   * @param before the air as it was known until now, which is used up: where lines only have more readings, what was
   * summed is gone on with
   */
  constructor(lines: ReadonlyMap<string, AirLine>, before: ShopAir | null = null) {
    this.#lines = lines;
    if (before === null) return;
    const longer = new Map<string, AirDays>();
    for (const [place, line] of lines) {
      const known = before.#lines.get(place);
      if (known === undefined || !goesOnFrom(known, line)) continue;
      const air = new AirDays(line, before.#airOf(known));
      this.#air.set(line, air);
      longer.set(place, air);
    }
    for (const [key, sum] of before.#sums) {
      const air = longer.get(key.slice(0, key.indexOf("\n")));
      if (air === undefined) continue;
      sum.goOnWith(air);
      this.#sums.set(key, sum);
    }
  }

  /**
   * The air of a piece by where it hung.
   *
   * @param moves rising in time: from when on it hung where; before the first it was where the first says
   */
  of(moves: readonly Move[]): HangingAir {
    const stays = moves.toSorted((one, other) => one.at - other.at);
    if (this.#lines.size === 0 && stays.every(({ place }) => place === stays[0]?.place)) return SHEET_AIR;
    const [first] = stays;
    const oneLine = stays.every(
      ({ place }) => this.#lineOf(place) === this.#lineOf(first?.place ?? NO_PLACE),
    );
    // The usual shop has one air: then it does not matter where it hung, but to what cures under a lamp.
    const anyPlace = ({ curesBy }: Curing) => (oneLine && curesBy !== "light" ? first?.place : undefined);
    return {
      reach: (curing, from, minutes) => {
        const any = anyPlace(curing);
        if (any !== undefined) return inWholeMinutes(from, this.#reach(curing, any, from, minutes));
        let left = minutes;
        for (const { place, starts, ends } of staysFrom(stays, curing, from)) {
          const here = this.#spent(curing, place, starts, ends);
          if (here >= left) return inWholeMinutes(from, this.#reach(curing, place, starts, left));
          left -= here;
        }
        return Number.POSITIVE_INFINITY;
      },
      spent: (curing, from, to) => {
        const any = anyPlace(curing);
        if (any !== undefined) return this.#spent(curing, any, from, Math.max(from, to));
        return staysFrom(stays, curing, from).reduce(
          (sum, { place, starts, ends }) =>
            starts < to ? sum + this.#spent(curing, place, starts, Math.min(ends, to)) : sum,
          0,
        );
      },
      otherwise: () => this.#otherwise().map((air) => air.of(moves)),
    };
  }

  /** All lines off the same way. */
  #otherwise(): readonly ShopAir[] {
    this.#others ??= WEATHERS.map((weather) => {
      const lines = [...this.#lines].map(
        ([place, line]) => [place, { ...line, ahead: inWeather(line.ahead, weather) }] as const,
      );
      return new ShopAir(new Map(lines));
    });
    return this.#others;
  }

  /**
   * When coats that are hung at a place at each of these moments, which rise, and stay there have come so many minutes
   * by their sheet: as `reach` says of each, found in one sweep.
   */
  reachEach(curing: Curing, place: string, minutes: Minutes, moments: readonly Instant[]): Instant[] {
    const sum = this.#sumOf(curing, place);
    const [first = 0] = moments;
    const reached =
      sum === null || first < sum.start || moments.length === 1
        ? moments.map((moment) => this.#reach(curing, place, moment, minutes))
        : sum.reachEach(minutes, moments);
    for (let index = 0; index < reached.length; index++)
      reached[index] = inWholeMinutes(moments[index] as Instant, reached[index] as Instant);
    return reached;
  }

  /** The lines by place; `NO_PLACE` is the shop's own. */
  get lines(): ReadonlyMap<string, AirLine> {
    return this.#lines;
  }

  /** The air of a place at a moment, the shop's own where it has none of its own; null: not known. */
  at(place: string, moment: Instant): KnownAir | null {
    const line = this.#lineOf(place);
    return line === undefined ? null : airAt(line, moment, this.#airOf(line).expected);
  }

  /** Bounds of the air of a place from a moment on, where it is known and no reading is later; null: not so. */
  boundsFrom(place: string, moment: Instant): AirBounds | null {
    const line = this.#lineOf(place);
    if (line === undefined || moment < (line.readings.at(-1)?.at ?? line.since)) return null;
    return boundsAhead(line.ahead);
  }

  /** Whether a coat that hangs at a place dries as fast at every moment from one on. */
  isSteadyFrom(curing: Curing, place: string, moment: Instant): boolean {
    const line = this.#lineOf(place);
    if (line === undefined) return true;
    const { since, readings, ahead } = line;
    if (moment < since || ahead.off !== undefined) return false;
    const toCome = readings.slice(Math.max(0, firstFrom(readings, moment) - 1));
    const [first, ...others] = [...ahead.byHour, ...(ahead.last === null ? [] : [ahead.last]), ...toCome];
    const { rateIn } = cureLaw(curing);
    const rate = first && rateIn(first);
    return others.every((air) => rateIn(air) === rate);
  }

  #airOf(line: AirLine): AirDays {
    const air = this.#air.get(line) ?? new AirDays(line);
    this.#air.set(line, air);
    return air;
  }

  #lineOf(place: string): AirLine | undefined {
    return this.#lines.get(place) ?? this.#lines.get(NO_PLACE);
  }

  /** Minutes by the sheet in a stay; of one without end, without end. */
  #spent(curing: Curing, place: string, from: Instant, to: Instant): Minutes {
    const sum = this.#sumOf(curing, place);
    if (to === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
    if (sum === null) return (to - from) / MINUTE;
    const before = Math.max(0, Math.min(to, sum.start) - from) / MINUTE;
    return before + (to > sum.start ? sum.spent(Math.max(from, sum.start), to) : 0);
  }

  #reach(curing: Curing, place: string, from: Instant, minutes: Minutes): Instant {
    const sum = this.#sumOf(curing, place);
    if (sum === null || after(from, minutes) <= sum.start) return after(from, minutes);
    const before = Math.max(0, sum.start - from) / MINUTE;
    return sum.reach(minutes - before, Math.max(from, sum.start));
  }

  /** Null: nothing is known of the air there. */
  #sumOf(curing: Curing, place: string): CureSum | null {
    const byPlace = this.#bySheet.get(curing) ?? new Map<string, CureSum>();
    const known = byPlace.get(place);
    if (known !== undefined) return known;
    const line = this.#lineOf(place);
    if (line === undefined) return null;
    const name = this.#lines.has(place) ? place : NO_PLACE;
    const key = `${name}\n${curingKey(curing)}`;
    const sum = this.#sums.get(key) ?? new CureSum(cureLaw(curing), this.#airOf(line));
    this.#sums.set(key, sum);
    this.#bySheet.set(curing, byPlace.set(place, sum));
    return sum;
  }
}

/** What cures alike has one sum: many pieces wear the same coat, each with its own copy of the sheet. */
function curingKey({ curesBy, sheetAir, lowestCelsius, activationEnergy }: Curing): string {
  return `${curesBy} ${sheetAir.celsius} ${sheetAir.humidityPercent} ${lowestCelsius} ${activationEnergy}`;
}

/** From a moment on a piece hung at a place. */
export interface Move {
  readonly at: Instant;
  readonly place: string;
}

/** What cures under a lamp does so only where it was hung for it: moved away it stands still. */
function staysFrom(moves: readonly Move[], { curesBy }: Curing, from: Instant) {
  const stays = moves.flatMap(({ at, place }, index) => {
    const ends = moves[index + 1]?.at ?? Number.POSITIVE_INFINITY;
    const starts = index === 0 ? from : Math.max(at, from);
    return ends <= from ? [] : [{ place, starts, ends }];
  });
  return curesBy === "light" ? stays.filter(({ place }) => place === stays[0]?.place) : stays;
}

/** A moment as so many whole minutes after another, as a sheet counts them: what opens at once does so at once. */
const inWholeMinutes = (from: Instant, moment: Instant): Instant =>
  from + Math.ceil((moment - from) / MINUTE - 1e-6) * MINUTE;

import { DEW_MARGIN, type DewMargin, dewMargin } from "../cure/fit-air.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Shop } from "../shop/shop.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";

/** How close air that changes is looked at. */
export const QUARTER: Minutes = 15;

/** Air, and how a piece that is as warm as it stands to its dew point. */
export interface DewyAir extends Air {
  readonly dew: DewMargin;
}

/** The most that the air of a place comes to in a span, each of it at some quarter. */
export interface Extremes {
  coldest: number;
  warmest: number;
  dampest: number;
  /** Whether a piece as warm as the air is dry enough of dew in all of it. */
  isFreeOfDew: boolean;
}

/** The air of a shop's places by quarters of an hour from a moment on; what was asked once is remembered. */
export class AirByQuarters {
  readonly #air: Shop["air"];
  readonly #from: Instant;
  /** The margin over the dew point that the maker wants, in °C. */
  readonly wanted: number;
  readonly #known = new Map<string, (DewyAir | null | undefined)[]>();

  constructor({ air, settings }: Pick<Shop, "air" | "settings">, from: Instant) {
    this.#air = air;
    this.#from = from;
    this.wanted = settings.dewMargin ?? DEW_MARGIN;
  }

  /** The moment a quarter begins with. */
  moment(quarter: number): Instant {
    return after(this.#from, quarter * QUARTER);
  }

  /** The air of a place, the shop's own where it has none of its own, as each quarter begins; null: not known. */
  at(place: string): (quarter: number) => DewyAir | null {
    const known = this.#of(this.#air.lines.has(place) ? place : NO_PLACE);
    return (quarter) => {
      const air = known[quarter];
      if (air !== undefined) return air;
      const found = this.#air.at(place, this.moment(quarter));
      const dewy = found === null ? null : { ...found, dew: dewMargin(found, found.celsius, this.wanted) };
      known[quarter] = dewy;
      return dewy;
    };
  }

  /** Of the first so many quarters. */
  extremes(place: string, quarters: number): Extremes {
    const at = this.at(place);
    const found = { coldest: Infinity, warmest: -Infinity, dampest: -Infinity, isFreeOfDew: true };
    for (let quarter = 0; quarter < quarters; quarter++) {
      const air = at(quarter);
      if (air === null) continue;
      if (air.celsius < found.coldest) found.coldest = air.celsius;
      if (air.celsius > found.warmest) found.warmest = air.celsius;
      if (air.humidityPercent > found.dampest) found.dampest = air.humidityPercent;
      if (!air.dew.isFit) found.isFreeOfDew = false;
    }
    return found;
  }

  #of(place: string): (DewyAir | null | undefined)[] {
    let known = this.#known.get(place);
    if (known === undefined) {
      known = [];
      this.#known.set(place, known);
    }
    return known;
  }
}

import type { AirBounds } from "../cure/air-ahead.ts";
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

/** The air of a shop's places by quarters of an hour from a moment on; what was asked once is remembered. */
export class AirByQuarters {
  readonly #air: Shop["air"];
  readonly #from: Instant;
  /** The margin over the dew point that the maker wants, in °C. */
  readonly wanted: number;
  readonly #bounds = new Map<string, AirBounds | null>();
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

  /** Air such as a place never comes to in all time from the first quarter on; null: nobody can say. */
  bounds(place: string): AirBounds | null {
    let bounds = this.#bounds.get(place);
    if (bounds === undefined) {
      bounds = this.#air.boundsFrom(place, this.#from);
      this.#bounds.set(place, bounds);
    }
    return bounds;
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

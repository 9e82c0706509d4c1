import { type Bounds, WHY } from "../conflict/bounds.ts";
import type { Rule } from "../conflict/model.ts";

/** A piece that is out from the start of one task until it is finished. */
export interface Outing {
  readonly from: number;
  readonly until: number;
}

/** Never more than so many pieces are out at once: a time-table of what surely is, as for any resource. */
export class OutRule implements Rule {
  readonly variables: readonly number[];
  readonly #outings: readonly Outing[];
  readonly #most: number;

  constructor(outings: readonly Outing[], most: number) {
    this.variables = outings.flatMap(({ from, until }) => [from, until]);
    this.#outings = outings;
    this.#most = most;
  }

  propagate(bounds: Bounds): boolean {
    return this.#outings.every(({ from }) =>
      this.#propagateAt(bounds, -(bounds.now[2 * from + 1] as number)),
    );
  }

  /** Looks at one moment: that at which some piece is out at the latest. */
  #propagateAt(bounds: Bounds, moment: number): boolean {
    const sure = this.#outings.filter((outing) => isSurelyOut(bounds, outing, moment));
    if (sure.length < this.#most) return true;
    if (sure.length > this.#most) return bounds.failBecause(noteOut(bounds, sure, moment));
    for (const outing of this.#outings) {
      if (!sure.includes(outing) && !this.#keepIn(bounds, outing, sure, moment)) return false;
    }
    return true;
  }

  /** No other piece is out then: one that is not finished by then begins later, one that begins before is finished. */
  #keepIn(bounds: Bounds, { from, until }: Outing, sure: readonly Outing[], moment: number): boolean {
    if (bounds.isTrue(2 * until, moment + 1) && !bounds.isTrue(2 * from, moment + 1)) {
      const place = noteOut(bounds, sure, moment);
      bounds.note(place, 2 * until, moment + 1);
      return bounds.raise(2 * from, moment + 1, WHY.NOTED, place);
    }
    if (bounds.isTrue(2 * from + 1, -moment) && !bounds.isTrue(2 * until + 1, -moment)) {
      const place = noteOut(bounds, sure, moment);
      bounds.note(place, 2 * from + 1, -moment);
      return bounds.raise(2 * until + 1, -moment, WHY.NOTED, place);
    }
    return true;
  }
}

/** Begun by then at the latest, and not finished by then at the earliest. */
function isSurelyOut(bounds: Bounds, { from, until }: Outing, moment: number): boolean {
  return bounds.isTrue(2 * from + 1, -moment) && bounds.isTrue(2 * until, moment + 1);
}

/** Notes why these are out at a moment. @returns the place of the note */
function noteOut(bounds: Bounds, outings: readonly Outing[], moment: number): number {
  const place = bounds.beginNote();
  for (const { from, until } of outings) {
    bounds.note(place, 2 * from + 1, -moment);
    bounds.note(place, 2 * until, moment + 1);
  }
  return place;
}

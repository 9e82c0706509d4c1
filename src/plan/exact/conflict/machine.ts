import { type Bounds, WHY } from "./bounds.ts";
import type { Rule } from "./model.ts";
import type { View } from "./resource.ts";

/**
 * Edge-finding for activities of which no two can run at once (Carlier and Pinson, Management Science 35, 1989;
 * quadratic after Nuijten, 1994): if a set of activities and one more cannot all end by the latest end of the set,
 * that one comes after the set. Explained as by Vilím (2005): the window the set must lie in, and what is too much.
 */
export class Machine implements Rule {
  readonly variables: readonly number[];
  readonly #view: View;
  readonly #count: number;
  readonly #earliest: Int32Array;
  /** Latest ends. */
  readonly #latest: Int32Array;
  /** Activities by earliest start. */
  readonly #order: number[];
  /** By place in the order, of the set from there on: its work, and its earliest end. */
  readonly #work: Int32Array;
  readonly #end: Int32Array;

  constructor(view: View) {
    this.variables = Array.from(view.side, (side) => side >> 1);
    this.#view = view;
    this.#count = view.side.length;
    this.#earliest = new Int32Array(this.#count);
    this.#latest = new Int32Array(this.#count);
    this.#order = Array.from({ length: this.#count }, (_, activity) => activity);
    this.#work = new Int32Array(this.#count + 1);
    this.#end = new Int32Array(this.#count + 1);
  }

  /** @returns false on a clash */
  propagate(bounds: Bounds): boolean {
    this.#look(bounds);
    for (let activity = 0; activity < this.#count; activity++) {
      if (!this.#findEdges(bounds, this.#latest[activity] as number)) return false;
    }
    return true;
  }

  #look(bounds: Bounds): void {
    const { side, shift, duration } = this.#view;
    for (let activity = 0; activity < this.#count; activity++) {
      const own = side[activity] as number;
      const after = shift[activity] as number;
      this.#earliest[activity] = (bounds.now[own] as number) + after;
      this.#latest[activity] = after - (bounds.now[own ^ 1] as number) + (duration[activity] as number);
    }
    const order = this.#order;
    // Nearly in order already: straight insertion.
    for (let place = 1; place < order.length; place++) {
      const activity = order[place] as number;
      const time = this.#earliest[activity] as number;
      let before = place;
      for (; before > 0 && (this.#earliest[order[before - 1] as number] as number) > time; before--) {
        order[before] = order[before - 1] as number;
      }
      order[before] = activity;
    }
  }

  /** Looks at the activities that must end by `until`, and at what then must come after them. */
  #findEdges(bounds: Bounds, until: number): boolean {
    const order = this.#order;
    const { duration } = this.#view;
    this.#work[this.#count] = 0;
    this.#end[this.#count] = -(2 ** 30);
    for (let place = this.#count - 1; place >= 0; place--) {
      const activity = order[place] as number;
      let work = this.#work[place + 1] as number;
      let end = this.#end[place + 1] as number;
      if ((this.#latest[activity] as number) <= until) {
        work += duration[activity] as number;
        end = Math.max(end, (this.#earliest[activity] as number) + work);
        if ((this.#earliest[activity] as number) + work > until) return this.#fail(bounds, place, until);
      }
      this.#work[place] = work;
      this.#end[place] = end;
    }
    return this.#moveAfter(bounds, until);
  }

  /** Moves every activity that may end later than `until`, and does not fit before it, past the set it does not fit in. */
  #moveAfter(bounds: Bounds, until: number): boolean {
    const { duration } = this.#view;
    // Of the sets that begin before the activity: the one that leaves it least room.
    let tightest = -1;
    let fullest = -(2 ** 30);
    for (let place = 0; place < this.#count; place++) {
      const activity = this.#order[place] as number;
      const earliest = this.#earliest[activity] as number;
      const lasts = duration[activity] as number;
      if ((this.#latest[activity] as number) <= until) {
        const full = earliest + (this.#work[place] as number);
        if (full > fullest) {
          fullest = full;
          tightest = place;
        }
        continue;
      }
      let set = -1;
      if (fullest + lasts > until) set = tightest;
      else if (earliest + lasts + (this.#work[place] as number) > until) set = place;
      if (set < 0 || (this.#work[set] as number) === 0) continue;
      // It starts after the set's earliest end anyway.
      if ((this.#end[set] as number) <= earliest) continue;
      if (!this.#push(bounds, activity, set, until)) return false;
    }
    return true;
  }

  /** The activity comes after all of the set that begins at a place of the order and ends by `until`. */
  #push(bounds: Bounds, activity: number, set: number, until: number): boolean {
    const { side, shift } = this.#view;
    const own = side[activity] as number;
    const end = this.#end[set] as number;
    const first = Math.min(
      this.#earliest[activity] as number,
      this.#earliest[this.#order[set] as number] as number,
    );
    const place = bounds.beginNote();
    bounds.note(place, own, first - (shift[activity] as number));
    this.#noteSet(bounds, place, set, until, first);
    // The part of the set that cannot end before `end`.
    let part = set;
    while ((this.#end[part + 1] as number) === end) part++;
    this.#noteStarts(bounds, place, part, until, end - (this.#work[part] as number));
    return bounds.raise(own, end - (shift[activity] as number), WHY.NOTED, place);
  }

  /** Notes that every activity of the set that begins at a place of the order lies between `first` and `until`. */
  #noteSet(bounds: Bounds, place: number, set: number, until: number, first: number): void {
    const { side, shift, duration } = this.#view;
    for (let at = set; at < this.#count; at++) {
      const activity = this.#order[at] as number;
      if ((this.#latest[activity] as number) > until) continue;
      const latestStart = until - (duration[activity] as number);
      bounds.note(place, (side[activity] as number) ^ 1, (shift[activity] as number) - latestStart);
      bounds.note(place, side[activity] as number, first - (shift[activity] as number));
    }
  }

  #noteStarts(bounds: Bounds, place: number, set: number, until: number, first: number): void {
    const { side, shift } = this.#view;
    for (let at = set; at < this.#count; at++) {
      const activity = this.#order[at] as number;
      if ((this.#latest[activity] as number) > until) continue;
      bounds.note(place, side[activity] as number, first - (shift[activity] as number));
    }
  }

  /** The set that begins at a place of the order has more work than time until `until`. */
  #fail(bounds: Bounds, set: number, until: number): false {
    const place = bounds.beginNote();
    this.#noteSet(bounds, place, set, until, this.#earliest[this.#order[set] as number] as number);
    return bounds.failBecause(place);
  }
}

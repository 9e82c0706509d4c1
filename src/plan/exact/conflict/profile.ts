import { type Bounds, WHY } from "./bounds.ts";
import type { Rule } from "./model.ts";
import type { View } from "./resource.ts";

/**
 * Time-table propagation: an activity whose latest start lies before its earliest end surely runs in between; where
 * what surely runs leaves too little, no other activity can be. Explained moment by moment (Schutt, Feydy, Stuckey
 * and Wallace, Constraints 16, 2011): at one moment, the activities running then are reason enough.
 */
export class Profile implements Rule {
  readonly variables: readonly number[];
  readonly #view: View;
  /** Steps of the profile: `height[k]` is taken from `time[k]` to `time[k + 1]`. */
  readonly #time: Int32Array;
  readonly #height: Int32Array;
  #steps = 0;
  #peak = 0;

  constructor(view: View) {
    this.variables = Array.from(view.side, (side) => side >> 1);
    this.#view = view;
    this.#time = new Int32Array(2 * view.side.length + 1);
    this.#height = new Int32Array(2 * view.side.length + 1);
  }

  /** @returns false on a clash */
  propagate(bounds: Bounds): boolean {
    const { demand, capacity } = this.#view;
    this.#build(bounds);
    // The peak says at once which activities cannot be in the way of any step.
    if (this.#peak > capacity) return this.#fail(bounds);
    if (this.#peak === 0) return true;
    for (let activity = 0; activity < demand.length; activity++) {
      if ((demand[activity] as number) + this.#peak <= capacity) continue;
      if (!this.#moveOn(bounds, activity)) return false;
    }
    return true;
  }

  #earliest(bounds: Bounds, activity: number): number {
    const { side, shift } = this.#view;
    return (bounds.now[side[activity] as number] as number) + (shift[activity] as number);
  }

  #latest(bounds: Bounds, activity: number): number {
    const { side, shift } = this.#view;
    return (shift[activity] as number) - (bounds.now[(side[activity] as number) ^ 1] as number);
  }

  /** Sums up what surely runs. */
  #build(bounds: Bounds): void {
    const { duration, demand } = this.#view;
    const time = this.#time;
    const height = this.#height;
    this.#steps = 0;
    for (let activity = 0; activity < demand.length; activity++) {
      const from = this.#latest(bounds, activity);
      const until = this.#earliest(bounds, activity) + (duration[activity] as number);
      if (from >= until) continue;
      this.#insert(from, demand[activity] as number);
      this.#insert(until, -(demand[activity] as number));
    }
    // So far `height` holds what changes at each moment.
    this.#peak = 0;
    let level = 0;
    let steps = 0;
    for (let step = 0; step < this.#steps; step++) {
      level += height[step] as number;
      const at = time[step] as number;
      if (step + 1 < this.#steps && time[step + 1] === at) continue;
      time[steps] = at;
      height[steps++] = level;
      if (level > this.#peak) this.#peak = level;
    }
    this.#steps = steps;
  }

  #insert(at: number, change: number): void {
    const time = this.#time;
    const height = this.#height;
    let place = this.#steps++;
    for (; place > 0 && (time[place - 1] as number) > at; place--) {
      time[place] = time[place - 1] as number;
      height[place] = height[place - 1] as number;
    }
    time[place] = at;
    height[place] = change;
  }

  /** Moves an activity's earliest start past every moment at which it cannot run. */
  #moveOn(bounds: Bounds, activity: number): boolean {
    const { duration, demand, capacity } = this.#view;
    const time = this.#time;
    const lasts = duration[activity] as number;
    const room = capacity - (demand[activity] as number);
    const latest = this.#latest(bounds, activity);
    let start = this.#earliest(bounds, activity);
    // From its latest start on the profile holds the activity itself.
    const surely = Math.max(latest, start);
    const surelyUntil = start + lasts;
    for (let step = 0; step + 1 < this.#steps; step++) {
      const until = time[step + 1] as number;
      if (until <= start) continue;
      // Beyond its earliest end, or where no later start is left, nothing pushes it.
      const from = time[step] as number;
      if (from >= start + lasts || start === latest) break;
      if ((this.#height[step] as number) <= room) continue;
      if (from >= surely && until <= surelyUntil) continue;
      // In strides of its own length: at each it would meet a moment that has no room for it.
      while (start < until) {
        const moment = Math.min(until, start + lasts) - 1;
        if (!this.#push(bounds, activity, moment)) return false;
        start = moment + 1;
      }
    }
    return true;
  }

  /** The activity cannot run at `moment`, and starts too late to end before: it starts after. */
  #push(bounds: Bounds, activity: number, moment: number): boolean {
    const { side, shift, duration, demand, capacity } = this.#view;
    const own = side[activity] as number;
    const place = bounds.beginNote();
    bounds.note(place, own, moment - (duration[activity] as number) + 1 - (shift[activity] as number));
    this.#noteRunning(bounds, place, activity, moment, capacity - (demand[activity] as number));
    return bounds.raise(own, moment + 1 - (shift[activity] as number), WHY.NOTED, place);
  }

  /** Notes activities that surely run at a moment and together take more than `room`, the greediest first. */
  #noteRunning(bounds: Bounds, place: number, except: number, moment: number, room: number): void {
    const { side, shift, duration, demand } = this.#view;
    const running: number[] = [];
    for (let other = 0; other < demand.length; other++) {
      if (other === except || this.#latest(bounds, other) > moment) continue;
      if (this.#earliest(bounds, other) + (duration[other] as number) > moment) running.push(other);
    }
    running.sort((a, b) => (demand[b] as number) - (demand[a] as number) || a - b);
    let taken = 0;
    for (const other of running) {
      const from = moment - (duration[other] as number) + 1;
      bounds.note(place, side[other] as number, from - (shift[other] as number));
      bounds.note(place, (side[other] as number) ^ 1, (shift[other] as number) - moment);
      taken += demand[other] as number;
      if (taken > room) return;
    }
  }

  /** More surely runs at the highest step than there is. */
  #fail(bounds: Bounds): false {
    let step = 0;
    while ((this.#height[step] as number) < this.#peak) step++;
    const place = bounds.beginNote();
    this.#noteRunning(bounds, place, -1, this.#time[step] as number, this.#view.capacity);
    return bounds.failBecause(place);
  }
}

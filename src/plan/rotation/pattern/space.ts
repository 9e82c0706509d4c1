import { isLookOf, type Route } from "./route.ts";

/** Room for what is reckoned of one piece that is put in, taken again for the next: making it anew takes long. */
export class Space {
  /** By task and slot. */
  readonly hindered: readonly Uint8Array[];
  readonly hinderedMade: readonly Uint8Array[];
  readonly setUps: readonly Int16Array[];
  readonly costs: readonly Float64Array[];
  readonly tails: TailSpace;

  constructor(route: Route) {
    const { tasks } = route.circle;
    const { size } = route.time;
    const isLook = isLookOf(route);
    this.hindered = tasks.map(() => new Uint8Array(size));
    this.hinderedMade = tasks.map(({ setUp }) => new Uint8Array(setUp === null ? 0 : size));
    this.setUps = tasks.map((_, task) => new Int16Array(isLook.has(task) ? 0 : size));
    this.costs = this.setUps.map(({ length }) => new Float64Array(length));
    this.tails = new TailSpace(route);
  }
}

/** The same for the tails of one way through the row. */
export class TailSpace {
  /** By place in the row. */
  readonly leasts: readonly Float64Array[];
  readonly opens: readonly Int32Array[];
  /** For as many as stand in a queue. */
  readonly lefts: Float64Array;
  readonly ends: Int32Array;
  readonly queue: Int32Array;

  constructor({ row, time: { size } }: Route) {
    this.leasts = row.map(() => new Float64Array(size));
    this.opens = row.map(() => new Int32Array(size));
    this.lefts = new Float64Array(3 * size + 1);
    this.ends = new Int32Array(3 * size);
    this.queue = new Int32Array(3 * size);
  }
}

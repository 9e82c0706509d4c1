import type { Minutes } from "../../../time/instant.ts";
import { mod } from "./mod.ts";
import { outAt, type Placed } from "./placed.ts";
import type { Route } from "./route.ts";
import { StationUses, type Use } from "./station-uses.ts";

/** What some pieces take of the circle, for one more piece to be put between them. */
export class Occupied {
  readonly route: Route;
  readonly period: Minutes;
  readonly pieces: readonly Placed[];
  readonly uses: StationUses;
  /** By minute, pairs of hands at work; only where there are more than one. */
  readonly hands: Uint8Array;
  /** By kind of hold and minute, how much is held. */
  readonly held: readonly Int16Array[];
  /** By session: the end of the last work, and by station the minutes of putting away it owes. */
  readonly lastEnd: Minutes[];
  readonly owed: Minutes[][];

  constructor(route: Route, pieces: readonly Placed[]) {
    const { circle } = route;
    this.route = route;
    this.period = circle.period;
    this.pieces = pieces;
    this.uses = new StationUses(circle, route.time);
    this.hands = new Uint8Array(circle.hands > 1 ? circle.period : 0);
    this.held = circle.room.map(() => new Int16Array(circle.period));
    this.lastEnd = circle.sessions.map(({ opens }) => opens);
    this.owed = circle.sessions.map(() => this.uses.all.map(() => 0));
    for (const [index, piece] of pieces.entries()) this.#take(index, piece);
  }

  /**
   * By minute (and the end of the last), what it costs one piece more to be out from minute 0 to then: its minutes, those
   * at which as many are out already as may be counted so much more.
   */
  outCosts(most: number, more: number): Float64Array {
    const { period } = this;
    const costs = new Float64Array(period + 1);
    const edges = this.pieces.flatMap(({ from, until }) => [mod(from, period), mod(until, period)]);
    const cuts = [...new Set([0, ...edges])].sort((one, other) => one - other);
    let cost = 0;
    for (const [index, from] of cuts.entries()) {
      const each = outAt(this.pieces, from, period) >= most ? 1 + more : 1;
      for (let minute = from; minute < (cuts[index + 1] ?? period); minute++) {
        costs[minute] = cost;
        cost += each;
      }
    }
    costs[period] = cost;
    return costs;
  }

  #take(index: number, piece: Placed): void {
    const { circle } = this.route;
    const { period } = this;
    for (const [task, { minutes, setUp }] of circle.tasks.entries()) {
      const start = piece.starts[task] as number;
      const minute = mod(start, period);
      const made = piece.made[task] === true;
      const session = this.route.time.sessionAt(minute);
      this.uses.add({ minute, task, piece: index, made } satisfies Use);
      this.lastEnd[session] = Math.max(this.lastEnd[session] as number, minute + minutes);
      const { station = -1, putAway = 0, minutes: head = 0 } = circle.setUps[setUp ?? -1] ?? {};
      const owed = this.owed[session] as number[];
      if (station >= 0) owed[station] = Math.max(owed[station] as number, putAway);
      if (circle.hands === 1) continue;
      for (let at = minute - (made ? head : 0); at < minute + minutes; at++) (this.hands[at] as number)++;
    }
    for (const { of, task, after, minutes, freedBy } of circle.holds) {
      const from = (piece.starts[task] as number) + after;
      const freed = freedBy === null ? Number.POSITIVE_INFINITY : (piece.starts[freedBy] as number);
      const held = this.held[of] as Int16Array;
      for (let at = from; at < Math.min(from + minutes, freed); at++) (held[mod(at, period)] as number)++;
    }
  }
}

import type { Minutes } from "../../time/instant.ts";
import type { Bench, BenchPiece } from "./bench.ts";
import { pieceCost } from "./place-task.ts";

/** Places in an order between two checkpoints: going back costs at most so many tasks more. */
export const STRIDE = 8;

/** Figures kept of the bench, of each piece and of each station. */
const OF_BENCH = 2;
const OF_PIECE = 6;
const OF_STATION = 10;

/**
 * The bench as it was at every STRIDE-th place of a play, so that another can go on from there. How tasks were played
 * is kept elsewhere.
 */
export class Checkpoints {
  readonly #bench: Bench;
  readonly #width: number;
  readonly #rows: Int32Array;
  /** What the plan cost at least, and what of it was set-ups and amends. */
  readonly #costs: Float64Array;

  constructor(bench: Bench, places: number) {
    this.#bench = bench;
    const { pieces, stations, slots, clearAt, hands } = bench;
    this.#width =
      OF_BENCH +
      OF_PIECE * pieces.length +
      OF_STATION * stations.length +
      slots.length +
      clearAt.length +
      hands.length;
    const count = Math.floor(places / STRIDE) + 1;
    this.#rows = new Int32Array(this.#width * count);
    this.#costs = new Float64Array(2 * count);
  }

  /** Notes the bench as it is before the task at place `number * STRIDE`. */
  save(number: number): void {
    const rows = this.#rows;
    const { clock, looksAsked, cost, extra, pieces, stations, slots, clearAt, hands } = this.#bench;
    this.#costs[2 * number] = cost;
    this.#costs[2 * number + 1] = extra;
    let place = number * this.#width;
    rows[place++] = clock;
    rows[place++] = looksAsked;
    for (const piece of pieces) {
      rows[place++] = piece.begun ? 1 : 0;
      rows[place++] = piece.free;
      rows[place++] = piece.left;
      rows[place++] = piece.finish;
      rows[place++] = piece.leastFinish;
      rows[place++] = piece.hook === null ? -1 : piece.hook.index;
    }
    for (const station of stations) {
      rows[place++] = station.standing === null ? -1 : station.standing.index;
      rows[place++] = station.any ? 1 : 0;
      rows[place++] = station.ready;
      rows[place++] = station.lastUsed;
      rows[place++] = station.served;
      rows[place++] = station.session;
      rows[place++] = station.busyUntil;
      rows[place++] = station.owes;
      rows[place++] = station.maker === null ? -1 : station.maker.index;
      rows[place++] = station.user === null ? -1 : station.user.index;
    }
    for (const slot of slots) rows[place++] = slot.until;
    for (const until of clearAt) rows[place++] = until;
    for (const until of hands) rows[place++] = until;
  }

  /** Puts the bench back to what it was there. */
  load(number: number): void {
    const rows = this.#rows;
    const bench = this.#bench;
    bench.cost = this.#costs[2 * number] as number;
    bench.extra = this.#costs[2 * number + 1] as number;
    let place = number * this.#width;
    bench.clock = rows[place++] as number;
    bench.looksAsked = rows[place++] as number;
    for (const slot of bench.slots) slot.piece = null;
    for (const piece of bench.pieces) {
      piece.begun = rows[place++] === 1;
      piece.free = rows[place++] as number;
      piece.left = rows[place++] as number;
      piece.finish = rows[place++] as number;
      piece.leastFinish = rows[place++] as number;
      piece.hook = bench.slots[rows[place++] as number] ?? null;
      if (piece.hook !== null) piece.hook.piece = piece;
    }
    for (const station of bench.stations) {
      station.standing = bench.setUps[rows[place++] as number] ?? null;
      station.any = rows[place++] === 1;
      station.ready = rows[place++] as number;
      station.lastUsed = rows[place++] as number;
      station.served = rows[place++] as number;
      station.session = rows[place++] as number;
      station.busyUntil = rows[place++] as number;
      station.owes = rows[place++] as number;
      station.maker = bench.tasks[rows[place++] as number] ?? null;
      station.user = bench.tasks[rows[place++] as number] ?? null;
    }
    for (const slot of bench.slots) slot.until = rows[place++] as number;
    for (let index = 0; index < bench.clearAt.length; index++) {
      bench.clearAt[index] = rows[place++] as number;
    }
    for (let index = 0; index < bench.hands.length; index++) bench.hands[index] = rows[place++] as number;
  }

  /** Takes over what another play has noted, from one number up to another. */
  copy(from: Checkpoints, first: number, last: number): void {
    const width = this.#width;
    this.#rows.set(from.#rows.subarray(first * width, last * width), first * width);
    this.#costs.set(from.#costs.subarray(2 * first, 2 * last), 2 * first);
  }

  /** How many looks had been asked for by then. */
  looksAsked(number: number): number {
    return this.#rows[number * this.#width + 1] as number;
  }

  /** Set-up and amends up to there, at their price. */
  extra(number: number): number {
    return this.#costs[2 * number + 1] as number;
  }

  /**
   * Writes into all checkpoints from a number on that the bench's pieces that are done by now finish when they do, and
   * that so much more went into set-ups and amends.
   */
  correct(number: number, more: number): void {
    const { pieces } = this.#bench;
    const rows = this.#rows;
    for (let index = number; 2 * index < this.#costs.length; index++) {
      let change = more;
      for (const piece of pieces) {
        if (piece.left > 0) continue;
        const place = index * this.#width + OF_BENCH + OF_PIECE * piece.index;
        change +=
          pieceCost(this.#bench, piece, piece.finish) -
          pieceCost(this.#bench, piece, rows[place + 4] as number);
        rows[place + 3] = piece.finish;
        rows[place + 4] = piece.finish;
      }
      this.#costs[2 * index] = (this.#costs[2 * index] as number) + change;
      this.#costs[2 * index + 1] = (this.#costs[2 * index + 1] as number) + more;
    }
  }

  /**
   * Whether all that comes from minute `from` on meets the bench in the state noted there: what has passed by then
   * counts as the same, however it passed. What tasks to come wait for is not looked at.
   */
  isSame(number: number, from: Minutes): boolean {
    const { pieces, hands, clearAt, slots, mostOut } = this.#bench;
    const rows = this.#rows;
    let place = number * this.#width + OF_BENCH;
    const later = (minute: number): boolean =>
      Math.max(minute, from) === Math.max(rows[place++] as number, from);
    let same = true;
    for (const piece of pieces) {
      same &&= (piece.begun ? 1 : 0) === rows[place] && piece.left === rows[place + 2];
      place += 1;
      same = later(piece.free) && same;
      place += 1;
      same = (later(piece.finish) || mostOut === null) && same;
      place += 1;
      same = this.#sameHook(piece, rows[place++] as number, from) && same;
      if (!same) return false;
    }
    for (const station of this.#bench.stations) {
      const { standing } = station;
      same &&=
        (standing === null ? -1 : standing.index) === rows[place] &&
        (station.any ? 1 : 0) === rows[place + 1];
      place += 2;
      same = (later(station.ready) || standing === null) && same;
      const keeps = standing === null || standing.way === "load" ? 0 : standing.keeps;
      if (standing?.way === "mix") {
        const ready = rows[place - 1] as number;
        same &&= station.ready === ready || Math.max(station.ready, ready) + keeps < from;
      }
      const used = rows[place++] as number;
      same &&=
        station.lastUsed === used ||
        Math.max(station.lastUsed, used) + keeps < from ||
        standing?.way !== "heat";
      same &&=
        station.served === rows[place++] ||
        standing === null ||
        standing.way !== "mix" ||
        station.ready + keeps < from;
      const session = this.#bench.calendar.at(from);
      const noted = rows[place++] as number;
      same = later(station.busyUntil) && same;
      const owes = noted === session ? (rows[place] as number) : 0;
      same &&= owes === (station.session === session ? station.owes : 0);
      // A set-up that is put away stands in its own session only.
      same &&= noted === station.session || (standing?.putAway ?? 0) === 0;
      place += 3;
      if (!same) return false;
    }
    const taken = place;
    place += slots.length;
    for (const until of clearAt) same = later(until) && same;
    for (const until of hands) same = later(until) && same;
    return same && this.#sameHooks(taken, from);
  }

  #sameHook({ hook }: BenchPiece, noted: number, from: Minutes): boolean {
    const now = hook === null || hook.until <= from ? 0 : 1;
    // The hook it hung on is not noted; one taken beyond now is among those compared as a whole.
    return now === 1 ? noted >= 0 : true;
  }

  /** For how long the hooks of each place are taken, whichever they are. */
  #sameHooks(taken: number, from: Minutes): boolean {
    const { places } = this.#bench;
    for (const { slots } of places) {
      const now = slots.map(({ until }) => Math.max(until, from)).sort((a, b) => a - b);
      const noted = slots
        .map(({ index }) => Math.max(this.#rows[taken + index] as number, from))
        .sort((a, b) => a - b);
      if (now.some((until, index) => until !== noted[index])) return false;
    }
    return true;
  }
}

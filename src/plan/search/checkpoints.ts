import type { Minutes } from "../../time/instant.ts";
import type { Bench, BenchPiece, BenchSetUp, BenchSlot, BenchStation, BenchTask } from "./bench.ts";
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
    for (let index = 0; index < pieces.length; index++) {
      const piece = pieces[index] as BenchPiece;
      rows[place++] = piece.begun ? 1 : 0;
      rows[place++] = piece.free;
      rows[place++] = piece.left;
      rows[place++] = piece.finish;
      rows[place++] = piece.leastFinish;
      rows[place++] = piece.hook === null ? -1 : piece.hook.index;
    }
    for (let index = 0; index < stations.length; index++) {
      const station = stations[index] as BenchStation;
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
    for (let index = 0; index < slots.length; index++) rows[place++] = (slots[index] as BenchSlot).until;
    for (let index = 0; index < clearAt.length; index++) rows[place++] = clearAt[index] as number;
    for (let index = 0; index < hands.length; index++) rows[place++] = hands[index] as number;
  }

  /** Puts the bench back to what it was there. */
  load(number: number): void {
    const rows = this.#rows;
    const bench = this.#bench;
    const { pieces, stations, slots, setUps, tasks, clearAt, hands } = bench;
    bench.cost = this.#costs[2 * number] as number;
    bench.extra = this.#costs[2 * number + 1] as number;
    let place = number * this.#width;
    bench.clock = rows[place++] as number;
    bench.looksAsked = rows[place++] as number;
    for (let index = 0; index < slots.length; index++) (slots[index] as BenchSlot).piece = null;
    for (let index = 0; index < pieces.length; index++) {
      const piece = pieces[index] as BenchPiece;
      piece.begun = rows[place++] === 1;
      piece.free = rows[place++] as number;
      piece.left = rows[place++] as number;
      piece.finish = rows[place++] as number;
      piece.leastFinish = rows[place++] as number;
      const hook = rows[place++] as number;
      piece.hook = hook < 0 ? null : (slots[hook] as BenchSlot);
      if (piece.hook !== null) piece.hook.piece = piece;
    }
    for (let index = 0; index < stations.length; index++) {
      const station = stations[index] as BenchStation;
      const standing = rows[place++] as number;
      station.standing = standing < 0 ? null : (setUps[standing] as BenchSetUp);
      station.any = rows[place++] === 1;
      station.ready = rows[place++] as number;
      station.lastUsed = rows[place++] as number;
      station.served = rows[place++] as number;
      station.session = rows[place++] as number;
      station.busyUntil = rows[place++] as number;
      station.owes = rows[place++] as number;
      const maker = rows[place++] as number;
      station.maker = maker < 0 ? null : (tasks[maker] as BenchTask);
      const user = rows[place++] as number;
      station.user = user < 0 ? null : (tasks[user] as BenchTask);
    }
    for (let index = 0; index < slots.length; index++) {
      (slots[index] as BenchSlot).until = rows[place++] as number;
    }
    for (let index = 0; index < clearAt.length; index++) clearAt[index] = rows[place++] as number;
    for (let index = 0; index < hands.length; index++) hands[index] = rows[place++] as number;
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
      for (let number = 0; number < pieces.length; number++) {
        const piece = pieces[number] as BenchPiece;
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
    const { pieces, stations, slots, clearAt, hands } = this.#bench;
    const rows = this.#rows;
    let place = number * this.#width + OF_BENCH;
    for (let index = 0; index < pieces.length; index++, place += OF_PIECE) {
      if (!this.#samePiece(pieces[index] as BenchPiece, place, from)) return false;
    }
    for (let index = 0; index < stations.length; index++, place += OF_STATION) {
      if (!this.#sameStation(stations[index] as BenchStation, place, from)) return false;
    }
    const taken = place;
    place += slots.length;
    for (let index = 0; index < clearAt.length; index++) {
      if (!isAlike(clearAt[index] as Minutes, rows[place++] as Minutes, from)) return false;
    }
    for (let index = 0; index < hands.length; index++) {
      if (!isAlike(hands[index] as Minutes, rows[place++] as Minutes, from)) return false;
    }
    return this.#sameHooks(taken, from);
  }

  #samePiece(piece: BenchPiece, place: number, from: Minutes): boolean {
    const rows = this.#rows;
    return (
      (piece.begun ? 1 : 0) === rows[place] &&
      isAlike(piece.free, rows[place + 1] as Minutes, from) &&
      piece.left === rows[place + 2] &&
      (this.#bench.mostOut === null || isAlike(piece.finish, rows[place + 3] as Minutes, from)) &&
      this.#sameHook(piece, rows[place + 5] as number, from)
    );
  }

  #sameStation(station: BenchStation, place: number, from: Minutes): boolean {
    const rows = this.#rows;
    const { standing } = station;
    if ((standing === null ? -1 : standing.index) !== rows[place]) return false;
    if ((station.any ? 1 : 0) !== rows[place + 1]) return false;
    if (!isAlike(station.busyUntil, rows[place + 6] as Minutes, from)) return false;
    const session = this.#bench.calendar.at(from);
    const noted = rows[place + 5] as number;
    const owes = noted === session ? (rows[place + 7] as Minutes) : 0;
    if (owes !== (station.session === session ? station.owes : 0)) return false;
    if (standing === null) return true;
    // A set-up that is put away stands in its own session only.
    if (noted !== station.session && standing.putAway > 0) return false;
    const { way, keeps } = standing;
    const [ready, used, served] = [rows[place + 2], rows[place + 3], rows[place + 4]] as [
      number,
      number,
      number,
    ];
    if (!isAlike(station.ready, ready, from)) return false;
    if (way === "heat") return station.lastUsed === used || Math.max(station.lastUsed, used) + keeps < from;
    if (way === "load") return true;
    if (station.ready !== ready && Math.max(station.ready, ready) + keeps >= from) return false;
    return station.served === served || station.ready + keeps < from;
  }

  #sameHook({ hook }: BenchPiece, noted: number, from: Minutes): boolean {
    const now = hook === null || hook.until <= from ? 0 : 1;
    // The hook it hung on is not noted; one taken beyond now is among those compared as a whole.
    return now === 1 ? noted >= 0 : true;
  }

  /** For how long the hooks of each place are taken, whichever they are: of every such minute there are as many. */
  #sameHooks(taken: number, from: Minutes): boolean {
    const rows = this.#rows;
    for (const { slots } of this.#bench.places) {
      for (const { until } of slots) {
        let more = 0;
        for (const slot of slots) {
          if (isAlike(slot.until, until, from)) more++;
          if (isAlike(rows[taken + slot.index] as Minutes, until, from)) more--;
        }
        if (more !== 0) return false;
      }
    }
    return true;
  }
}

/** Whether two minutes are the same to all that comes from a minute on. */
function isAlike(minute: Minutes, noted: Minutes, from: Minutes): boolean {
  return minute === noted || (minute <= from && noted <= from);
}

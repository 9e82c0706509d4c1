import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import { findBegin, sharedTooEarly, usableWindows } from "./begin-task.ts";
import { type Bench, type BenchPiece, type BenchTask, type BenchWait, DECIDED } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { Checkpoints, STRIDE } from "./checkpoints.ts";
import { giveUpTask, pieceCost, placeTask } from "./place-task.ts";

/** How often one play may go back to end a task later before it is given up. */
const MOST_LIFTS = 30;

/** So many tasks played as in the order that stands make it likely that the plays have met. */
const LIKELY = 3;

/** Figures kept of each task. */
const KEPT = 7;

/** An order of work with what was decided for each task of it: by when it is lifted, and about its set-up. */
export interface Solution {
  readonly order: readonly BenchTask[];
  readonly decided: Int32Array;
  readonly cost: number;
}

/**
 * Plays orders of work: one task after the other, each begun as soon as hands, room, windows and hours let it (a serial
 * schedule generation in which time never goes back).
 *
 * A window that is missed lifts the task before it: that one is to end just late enough, and the play goes back to it.
 * A lift never asks for more than the window needs, and later begins only make later begins. So an order, with what is
 * decided of each set-up, is given the earliest times that it can have, and the best plan is among these.
 *
 * One order stands, with checkpoints along it: others that begin like it are played from where they differ, and no
 * further than to where the bench is again as it was.
 */
export class Player {
  readonly bench: Bench;
  /** The order that stands, and what its plan costs. */
  order: BenchTask[] = [];
  cost = Number.POSITIVE_INFINITY;
  /** Where the play at hand is in its order. */
  place = 0;
  /** How many lifts it may still make; below 0: it has failed. */
  liftsLeft = 0;
  /** The place of the task lifted last. */
  liftedPlace = 0;
  #trial: BenchTask[] = [];
  readonly #standing: Checkpoints;
  readonly #tried: Checkpoints;
  /** From which checkpoint on the play at hand has noted its own. */
  #own = 0;
  /** How many tasks in a row were played as in the order that stands. */
  #alike = 0;
  /** The checkpoint at which the play met the order that stands; -1: it did not. */
  #met = -1;
  readonly #kept: Int32Array;
  /** By piece: when it is finished in the plan that stands. */
  readonly #finish: Int32Array;
  lifts = 0;
  plays = 0;
  steps = 0;

  constructor(bench: Bench) {
    this.bench = bench;
    this.#standing = new Checkpoints(bench, bench.tasks.length);
    this.#tried = new Checkpoints(bench, bench.tasks.length);
    this.#kept = new Int32Array(KEPT * bench.tasks.length);
    this.#finish = new Int32Array(bench.pieces.length);
    this.#standing.save(0);
    for (const task of bench.tasks) this.#keep(task);
  }

  /**
   * Plays another order that differs from the one that stands only from one place up to another.
   *
   * @param ceiling broken off as soon as the plan is known to cost more
   * @returns what it costs; Infinity: more than the ceiling
   */
  try(trial: BenchTask[], from: number, to: number, ceiling: number): number {
    this.begin(trial, from);
    const { bench } = this;
    while (this.place < trial.length) {
      this.step(trial[this.place] as BenchTask);
      if (bench.cost > ceiling || this.liftsLeft < 0) return Number.POSITIVE_INFINITY;
      if (this.place >= to && this.hasMet()) return this.costWhenMet();
    }
    return bench.cost;
  }

  /** No order stands any more. */
  reset(): void {
    this.order = [];
    this.cost = Number.POSITIVE_INFINITY;
    this.#standing.load(0);
    for (const task of this.bench.tasks) {
      if (task.running || (task.ended !== null && !task.mended)) continue;
      task.position = -1;
      task.lifted = 0;
      task.decided = DECIDED.nothing;
      task.end = NEVER;
      this.#keep(task);
    }
  }

  /** Plays a whole order, whatever stood before, with what was decided for it, and lets it stand. */
  adopt({ order, decided }: Solution): void {
    this.reset();
    for (const [place, task] of order.entries()) {
      task.lifted = decided[2 * place] as number;
      task.decided = decided[2 * place + 1] as number;
    }
    this.#stand(this.try([...order], 0, order.length, Number.POSITIVE_INFINITY));
  }

  /** The order that stands, with what is decided for it. */
  solution(): Solution {
    const decided = new Int32Array(2 * this.order.length);
    for (const [place, task] of this.order.entries()) {
      decided[2 * place] = task.lifted;
      decided[2 * place + 1] = task.decided;
    }
    return { order: this.order, decided, cost: this.cost };
  }

  /** Puts the bench to a place in the order that stands, or a few before it, to go on from there. */
  begin(trial: BenchTask[], from: number): void {
    this.plays++;
    this.#trial = trial;
    this.#own = Math.floor(from / STRIDE);
    this.place = this.#own * STRIDE;
    this.liftsLeft = MOST_LIFTS + (this.order.length === 0 ? 4 * this.bench.tasks.length : 0);
    this.#alike = 0;
    this.#met = -1;
    this.#standing.load(this.#own);
  }

  /**
   * Plays a task at the place at hand.
   *
   * @returns false: a task before it (or itself) was lifted, and the play has gone back to a place before that one
   */
  step(task: BenchTask): boolean {
    this.steps++;
    const { place } = this;
    if (place % STRIDE === 0) this.#tried.save(place / STRIDE);
    this.#trial[place] = task;
    task.position = place;
    const early = this.#playTask(task);
    if (early !== null) {
      this.liftsLeft--;
      this.lifts++;
      this.liftedPlace = early.position;
      this.#alike = 0;
      this.place = this.#goBack(early.position);
      for (let gone = this.place; gone <= place; gone++) {
        const unplayed = this.#trial[gone] as BenchTask;
        unplayed.position = this.#kept[KEPT * unplayed.index + 5] as number;
      }
      return false;
    }
    this.place = place + 1;
    this.#alike = this.#isAsKept(task) ? this.#alike + 1 : 0;
    return true;
  }

  /** Plays a task. @returns one that has to end later for it; null: none */
  #playTask(task: BenchTask): BenchTask | null {
    const { bench } = this;
    task.parts.length = 0;
    if (findBegin(bench, task, bench.clock)) {
      const early = task.decided === DECIDED.shares ? this.#shareSetUp(task) : null;
      if (early !== null) return early;
      placeTask(bench, task);
      if (task.left > 0) this.#playParts(task);
      return null;
    }
    const { missed, missedBy } = bench;
    if (missed !== null && this.#lift(missed.on, missed.on.end + missedBy)) return missed.on;
    giveUpTask(bench, task);
    return null;
  }

  /** The rest of a task that was split is done first thing when the bench opens again. */
  #playParts(task: BenchTask): void {
    const { bench } = this;
    const { begin, setUpMinutes, start } = task;
    const windows = [...task.windows];
    task.parts.push(setUpMinutes, start, task.end);
    task.split = true;
    while (task.left > 0) {
      task.rest = task.left;
      if (!findBegin(bench, task, bench.clock)) {
        giveUpTask(bench, task);
        break;
      }
      placeTask(bench, task);
      task.parts.push(task.setUpMinutes, task.start, task.end);
    }
    task.split = false;
    task.rest = task.minutes;
    task.windows.push(...windows);
    if (task.end < NEVER) Object.assign(task, { begin, setUpMinutes, start });
  }

  #shareSetUp(task: BenchTask): BenchTask | null {
    const { station, setUp } = task;
    if (station === null || setUp === null || task.setUpMinutes === 0) return null;
    const early = sharedTooEarly(station, task);
    const before = setUp.way === "heat" ? station.user : station.maker;
    if (early <= 0 || before === null || before.running) return null;
    return this.#lift(before, before.end + early) ? before : null;
  }

  #lift(task: BenchTask, end: Minutes): boolean {
    if (
      task.running ||
      (task.ended !== null && !task.mended) ||
      end <= task.lifted ||
      end > this.bench.horizon
    )
      return false;
    task.lifted = end;
    return true;
  }

  /** Puts the bench back to a checkpoint before a place. @returns where that is */
  #goBack(place: number): number {
    const number = Math.floor(place / STRIDE);
    if (number < this.#own) {
      this.#own = number;
      this.#standing.load(number);
    } else this.#tried.load(number);
    return number * STRIDE;
  }

  /**
   * Whether the bench is again as it was at this place of the order that stands, so that all goes on as it did. To be
   * asked only where the same tasks have been played, and the same order follows.
   */
  hasMet(): boolean {
    const { place, order } = this;
    const next = order[place];
    if (next === undefined || this.#alike < LIKELY || place % STRIDE !== 0) return false;
    const from = this.#kept[KEPT * next.index] as number;
    if (from >= NEVER || !this.#standing.isSame(place / STRIDE, from) || this.#looksAhead(from)) return false;
    if (!this.bench.pieces.every((piece) => this.#waitsAlike(piece, from))) return false;
    // What held the next task back before may hold it back no more.
    const alike = findBegin(this.bench, next, this.bench.clock) && this.#isAsKept(next);
    this.#restore(next);
    if (alike) this.#met = place / STRIDE;
    return alike;
  }

  #isAsKept({ index, begin, setUpMinutes, end }: BenchTask): boolean {
    const row = KEPT * index;
    const kept = this.#kept;
    return kept[row] === begin && kept[row + 1] === setUpMinutes && kept[row + 3] === end;
  }

  /** Looks still to come may have been asked for at other minutes. */
  #looksAhead(from: Minutes): boolean {
    const { looks, looksAsked, longestLook } = this.bench;
    return longestLook > 0 && looks.slice(0, looksAsked).some((look) => look >= from);
  }

  /** What the piece's tasks to come wait for opens and shuts as it did. */
  #waitsAlike(piece: BenchPiece, from: Minutes): boolean {
    if (piece.left === 0) return true;
    for (const task of piece.tasks) {
      if (task.position < this.place) continue;
      for (const wait of task.waits)
        if (wait.on.position < this.place && !this.#waitAlike(wait, from)) return false;
    }
    return true;
  }

  #waitAlike({ on, windows }: BenchWait, from: Minutes): boolean {
    const before = this.#kept[KEPT * on.index + 3] as number;
    if (on.ended !== null || on.running || on.end === before) return true;
    return windows.every(
      ({ opens, shuts }) =>
        shuts === null &&
        Math.max(from, openingAfter(opens, on.end)) === Math.max(from, openingAfter(opens, before)),
    );
  }

  /** What the plan costs if all goes on from here as in the order that stands. */
  costWhenMet(): number {
    const { bench } = this;
    let cost = this.cost + bench.extra - this.#standing.extra(this.#met);
    for (const piece of bench.pieces) {
      if (piece.left > 0) continue;
      cost +=
        pieceCost(bench, piece, piece.finish) - pieceCost(bench, piece, this.#finish[piece.index] as number);
    }
    return cost;
  }

  /** The first place of the order that stands whose task begins at a minute or after it. */
  placeAt(minute: Minutes): number {
    let low = 0;
    let high = this.order.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#kept[KEPT * (this.order[middle] as BenchTask).index] as number) < minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** When its hands-on starts in the plan that stands. */
  startInOrder({ index }: BenchTask): Minutes {
    return this.#kept[KEPT * index + 2] as number;
  }

  /** Its place in the order that stands; -1: it is not in it. */
  placeInOrder({ index }: BenchTask): number {
    return this.#kept[KEPT * index + 5] as number;
  }

  /** Lets the order tried last stand, with no lift that it does not need. */
  accept(cost: number): void {
    this.#stand(cost);
    for (let again = 0; again < 3; again++) {
      const first = this.#relax();
      if (first < 0) return;
      const less = this.try([...this.order], first, first, this.cost);
      if (less > this.cost) {
        this.reject();
        return;
      }
      this.#stand(less);
    }
  }

  #stand(cost: number): void {
    const { bench } = this;
    const met = this.#met < 0 ? Math.floor(this.#trial.length / STRIDE) + 1 : this.#met;
    const end = Math.min(met * STRIDE, this.#trial.length);
    for (let place = end; place < this.order.length; place++) {
      const task = this.order[place] as BenchTask;
      this.#trial[place] = task;
      this.#restore(task);
    }
    this.order = this.#trial;
    this.cost = cost;
    this.#standing.copy(this.#tried, this.#own, met);
    if (this.#met >= 0) this.#standing.correct(met, bench.extra - this.#standing.extra(met));
    for (let place = this.#own * STRIDE; place < end; place++) this.#keep(this.order[place] as BenchTask);
    for (const piece of bench.pieces) {
      if (piece.left === 0) this.#finish[piece.index] = piece.finish;
      else if (this.#met < 0) this.#finish[piece.index] = piece.leastFinish;
    }
  }

  /** Lowers lifts that ask for more than the windows after them need. @returns the first place of one; -1: none */
  #relax(): number {
    let first = -1;
    const end = this.#met < 0 ? this.order.length : this.#met * STRIDE;
    for (let place = this.#own * STRIDE; place < end; place++) {
      const task = this.order[place] as BenchTask;
      if (task.lifted === 0) continue;
      let slack = NEVER;
      if (task.end <= task.lifted) {
        for (const wait of task.awaited) {
          const shuts = usableWindows(wait).at(-1)?.shuts ?? null;
          slack = Math.min(slack, shutAfter(shuts, task.end) - wait.task.start);
        }
      }
      if (slack <= 0) continue;
      task.lifted = Math.max(0, task.lifted - slack);
      if (first < 0 && task.end > task.lifted) first = place;
    }
    return first;
  }

  /** Forgets the order tried last: its tasks are as they were played in the order that stands. */
  reject(): void {
    const { looks } = this.bench;
    let asked = this.#standing.looksAsked(this.#own);
    for (let place = this.#own * STRIDE; place < this.order.length; place++) {
      const task = this.order[place] as BenchTask;
      this.#restore(task);
      if (task.end < NEVER) for (const look of task.looks) looks[asked++] = task.end + look;
    }
  }

  #keep(task: BenchTask): void {
    const row = KEPT * task.index;
    this.#kept[row] = task.begin;
    this.#kept[row + 1] = task.setUpMinutes;
    this.#kept[row + 2] = task.start;
    this.#kept[row + 3] = task.end;
    this.#kept[row + 4] = task.lifted;
    this.#kept[row + 5] = task.position;
    this.#kept[row + 6] = task.decided;
  }

  #restore(task: BenchTask): void {
    const row = KEPT * task.index;
    task.begin = this.#kept[row] as number;
    task.setUpMinutes = this.#kept[row + 1] as number;
    task.start = this.#kept[row + 2] as number;
    task.end = this.#kept[row + 3] as number;
    task.lifted = this.#kept[row + 4] as number;
    task.position = this.#kept[row + 5] as number;
    task.decided = this.#kept[row + 6] as number;
  }
}

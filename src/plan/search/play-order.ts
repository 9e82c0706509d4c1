import type { Minutes } from "../../time/instant.ts";
import { findBegin } from "./begin-task.ts";
import type { Bench, BenchPiece, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { Checkpoints, STRIDE } from "./checkpoints.ts";
import { Kept } from "./kept.ts";
import { isToDo } from "./order-of.ts";
import { pieceCost } from "./place-task.ts";
import { playTask, relaxLift } from "./play-task.ts";
import { decideFrom, type Solution, sameUpTo, solutionOf } from "./solution.ts";

/** How often one play may go back to end a task later before it is given up. */
const MOST_LIFTS = 30;

/** So many tasks played as in the order that stands make it likely that the plays have met. */
const LIKELY = 3;

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
  /** How its tasks were played. */
  readonly kept: Kept;
  /** By piece: when it is finished in the plan that stands. */
  readonly finishes: Int32Array;
  /** How many tasks were played: what the search counts as work. */
  steps = 0;

  constructor(bench: Bench) {
    this.bench = bench;
    this.#standing = new Checkpoints(bench, bench.tasks.length);
    this.#tried = new Checkpoints(bench, bench.tasks.length);
    this.kept = new Kept(bench.tasks.length);
    this.finishes = new Int32Array(bench.pieces.length);
    this.#standing.save(0);
    for (const task of bench.tasks) this.kept.keep(task);
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
    this.#standOnly(0);
    this.cost = Number.POSITIVE_INFINITY;
    this.#standing.load(0);
  }

  /** Of the order that stands only what is before a place does so from now on; no other task is played or decided. */
  #standOnly(end: number): void {
    const { tasks } = this.bench;
    for (let index = 0; index < tasks.length; index++) {
      const task = tasks[index] as BenchTask;
      if (!isToDo(task)) continue;
      const place = this.kept.place(task);
      if (place >= 0 && place < end) this.kept.restore(task);
      else this.kept.forget(task);
    }
    this.order = this.order.slice(0, end);
  }

  /** Lets an order stand with what was decided for it, whatever stood before. It may be one of some of the tasks. */
  adopt(solution: Solution): void {
    const { order, decided } = solution;
    const from = sameUpTo(this.order, solution);
    this.#standOnly(from);
    decideFrom(from, order, decided);
    this.#stand(this.try([...order], from, order.length, Number.POSITIVE_INFINITY));
  }

  /** Lets another order of all that stands in the order now stand in its place, if it costs less. */
  adoptIfLess(solution: Solution): void {
    const { order, decided } = solution;
    const from = sameUpTo(this.order, solution);
    decideFrom(from, order, decided);
    const cost = this.try([...order], from, order.length, this.cost);
    if (cost >= this.cost) this.reject();
    else this.#stand(cost);
  }

  /** The same, with every task played: windows and parts, which a plan is made of, are not kept of the order that stands. */
  playWhole(solution: Solution): void {
    this.reset();
    this.adopt(solution);
  }

  /** The order that stands, with what is decided for it. */
  solution(): Solution {
    return solutionOf(this.order, this.cost);
  }

  /** The order that has just been played, as far as it was. */
  played(): Solution {
    return solutionOf(this.#trial.slice(0, this.place), this.bench.cost);
  }

  /** Whether a task of those to do has been played in the play at hand. */
  isPlayed(task: BenchTask): boolean {
    const { position } = task;
    return position >= 0 && position < this.place && this.#trial[position] === task;
  }

  /** Puts the bench to a place in the order that stands, or a few before it, to go on from there. */
  begin(trial: BenchTask[], from: number): void {
    this.#trial = trial;
    this.#own = Math.floor(from / STRIDE);
    this.place = this.#own * STRIDE;
    this.liftsLeft = MOST_LIFTS + (this.order.length === 0 ? Math.ceil(this.bench.tasks.length / 2) : 0);
    this.#alike = 0;
    this.#met = -1;
    this.#standing.load(this.#own);
  }

  /**
   * Plays a task at the place at hand.
   *
   * @param isLaidOut findBegin has just laid it out on the bench as it is now
   * @returns false: a task before it (or itself) was lifted, and the play has gone back to a place before that one
   */
  step(task: BenchTask, isLaidOut = false): boolean {
    this.steps++;
    const { place } = this;
    if (place % STRIDE === 0) this.#tried.save(place / STRIDE);
    this.#trial[place] = task;
    task.position = place;
    const early = playTask(this.bench, task, isLaidOut);
    if (early !== null) {
      this.liftsLeft--;
      this.liftedPlace = early.position;
      this.#alike = 0;
      this.place = this.#goBack(early.position);
      for (let gone = this.place; gone <= place; gone++) {
        const unplayed = this.#trial[gone] as BenchTask;
        unplayed.position = this.kept.place(unplayed);
      }
      return false;
    }
    this.place = place + 1;
    this.#alike = this.kept.isAlike(task) ? this.#alike + 1 : 0;
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
    const from = this.kept.begin(next);
    if (from >= NEVER || !this.#standing.isSame(place / STRIDE, from) || this.#looksAhead(from)) return false;
    const { pieces } = this.bench;
    for (let index = 0; index < pieces.length; index++) {
      if (!this.kept.waitsAlike(pieces[index] as BenchPiece, place, from)) return false;
    }
    // What held the next task back before may hold it back no more.
    const alike = findBegin(this.bench, next, this.bench.clock) && this.kept.isAlike(next);
    this.kept.restore(next);
    if (alike) this.#met = place / STRIDE;
    return alike;
  }

  /** Looks still to come may have been asked for at other minutes. */
  #looksAhead(from: Minutes): boolean {
    const { looks, looksAsked, longestLook } = this.bench;
    return longestLook > 0 && looks.slice(0, looksAsked).some((look) => look >= from);
  }

  /** What the plan costs if all goes on from here as in the order that stands. */
  costWhenMet(): number {
    const { bench } = this;
    let cost = this.cost + bench.extra - this.#standing.extra(this.#met);
    for (let index = 0; index < bench.pieces.length; index++) {
      const piece = bench.pieces[index] as BenchPiece;
      if (piece.left > 0) continue;
      cost +=
        pieceCost(bench, piece, piece.finish) - pieceCost(bench, piece, this.finishes[piece.index] as number);
    }
    return cost;
  }

  /** The first place of the order that stands whose task begins at a minute or after it. */
  placeAt(minute: Minutes): number {
    return this.kept.placeAt(minute, this.order);
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
    if (this.#met < 0 && this.place % STRIDE === 0) this.#tried.save(this.place / STRIDE);
    const met = this.#met < 0 ? Math.floor(this.#trial.length / STRIDE) + 1 : this.#met;
    const end = Math.min(met * STRIDE, this.#trial.length);
    for (let place = end; place < this.order.length; place++) {
      const task = this.order[place] as BenchTask;
      this.#trial[place] = task;
      this.kept.restore(task);
    }
    this.order = this.#trial;
    this.cost = cost;
    this.#standing.copy(this.#tried, this.#own, met);
    if (this.#met >= 0) this.#standing.correct(met, bench.extra - this.#standing.extra(met));
    for (let place = this.#own * STRIDE; place < end; place++) this.kept.keep(this.order[place] as BenchTask);
    for (let index = 0; index < bench.pieces.length; index++) {
      const piece = bench.pieces[index] as BenchPiece;
      if (piece.left === 0) this.finishes[piece.index] = piece.finish;
      else if (this.#met < 0) this.finishes[piece.index] = piece.leastFinish;
    }
  }

  /** Lowers the lifts of what was just played. @returns the first place of one that was too high; -1: none */
  #relax(): number {
    let first = -1;
    const end = this.#met < 0 ? this.order.length : this.#met * STRIDE;
    for (let place = this.#own * STRIDE; place < end; place++) {
      if (relaxLift(this.order[place] as BenchTask) && first < 0) first = place;
    }
    return first;
  }

  /** Forgets the order tried last: its tasks are as they were played in the order that stands. */
  reject(): void {
    const { bench, order, kept } = this;
    let asked = this.#standing.looksAsked(this.#own);
    for (let place = this.#own * STRIDE; place < order.length; place++) {
      const task = order[place] as BenchTask;
      kept.restore(task);
      const { looks, end } = task;
      if (end >= NEVER) continue;
      for (let index = 0; index < looks.length; index++)
        bench.looks[asked++] = end + (looks[index] as Minutes);
    }
  }
}

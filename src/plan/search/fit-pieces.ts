import type { Minutes } from "../../time/instant.ts";
import type { BenchPiece, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { Drawing } from "./drawing.ts";
import { KeptWork } from "./kept-work.ts";
import { pieceCost } from "./place-task.ts";
import { SoonestWay } from "./soonest-way.ts";

/** At most so many pieces are taken out at once. */
const MOST = 4;

/** How much sooner than they stood pieces taken out may be begun, and how much later they may be finished. */
const SOONER: Minutes = 4000;
const LATER: Minutes = 3000;

/** Work that reaches out of the minutes looked at, of hooks and of air. */
const BEYOND: Minutes = 400;

/** Looking for a task's starts takes about as long as playing so many. */
const STEPS = 2;

/**
 * Takes out a few pieces that are in work together, and puts one after the other in again on the way that ends soonest
 * between all work that stands. What would cost too much is not even played.
 */
export class FitPieces {
  readonly #drawing: Drawing;
  readonly #work: KeptWork;
  readonly #way: SoonestWay;
  /** Pieces begun before the plan. */
  readonly #begun = new Set<BenchPiece>();

  constructor(drawing: Drawing) {
    const { bench } = drawing;
    this.#drawing = drawing;
    this.#work = new KeptWork(bench);
    this.#way = new SoonestWay(bench, this.#work);
    for (const { piece, running, ended } of bench.tasks)
      if (running || ended !== null) this.#begun.add(piece);
  }

  /** @returns what the changed order costs; Infinity: more than the ceiling, or nothing was changed */
  play(ceiling: number): number {
    const { player } = this.#drawing;
    const { order } = player;
    const outs = this.#drawPieces();
    let since = NEVER;
    let until = 0;
    for (const piece of outs) {
      since = Math.min(since, Math.max(piece.release, beginOf(piece) - SOONER));
      until = Math.max(until, this.#drawing.finish(piece) + LATER);
    }
    const from = player.placeAt(since);
    const to = player.placeAt(until + BEYOND);
    if (!isWhole(order, from, to, outs)) return Number.POSITIVE_INFINITY;
    this.#keep(order.slice(from, to), outs);
    if (!this.#fit(outs, since, until, ceiling)) return Number.POSITIVE_INFINITY;
    const trial = [...order.slice(0, from), ...this.#work.tasks, ...order.slice(to)];
    let first = from;
    while (first < to && trial[first] === order[first]) first++;
    if (first === to) return Number.POSITIVE_INFINITY;
    let end = to;
    while (trial[end - 1] === order[end - 1]) end--;
    return player.try(trial, first, end, ceiling);
  }

  /** A piece, late ones likelier, and others that are in work while it is, in any sequence. */
  #drawPieces(): BenchPiece[] {
    const { chance } = this.#drawing;
    const lead = chance() < 0.6 ? this.#drawing.latePiece() : this.#drawing.piece();
    const outs = [lead];
    const begin = beginOf(lead);
    for (let more = this.#drawing.below(MOST); more > 0; more--) {
      const other = chance() < 0.3 ? this.#drawing.latePiece() : this.#drawing.piece();
      const together = beginOf(other) < this.#drawing.finish(lead) && this.#drawing.finish(other) > begin;
      if (together && !outs.includes(other)) outs.splice(this.#drawing.below(outs.length + 1), 0, other);
    }
    return outs;
  }

  #keep(tasks: readonly BenchTask[], outs: readonly BenchPiece[]): void {
    const work = this.#work;
    work.clear();
    for (const task of tasks) {
      if (!outs.includes(task.piece)) work.add(task, task.begin, task.end);
    }
    const { bench } = this.#drawing;
    if (bench.mostOut === null) return;
    for (const piece of bench.pieces) {
      if (!outs.includes(piece))
        work.addOut(piece, this.#begun.has(piece) ? 0 : beginOf(piece), this.#drawing.finish(piece));
    }
  }

  /** Finds a way for each piece. @returns false: there is none, or the plan would cost more than the ceiling */
  #fit(outs: readonly BenchPiece[], since: Minutes, until: Minutes, ceiling: number): boolean {
    const { player, bench, chance } = this.#drawing;
    let more = 0;
    for (const piece of outs) more -= pieceCost(bench, piece, this.#drawing.finish(piece));
    const late = chance() < 0.7;
    for (const piece of outs) {
      const tasks = piece.tasks
        .filter(({ running }) => !running)
        .sort((one, other) => one.position - other.position);
      player.steps += STEPS * tasks.length;
      const isOut = this.#begun.has(piece);
      const end = this.#way.find(tasks, { from: Math.max(since, piece.release), until, isOut, late });
      if (end === null) return false;
      const finish = end + piece.cure;
      more += pieceCost(bench, piece, finish);
      if (player.cost + more > ceiling) return false;
      for (const task of tasks) {
        this.#work.add(task, this.#way.begin[task.index] as number, this.#way.end[task.index] as number);
      }
      const [first] = tasks;
      if (first !== undefined)
        this.#work.addOut(piece, isOut ? 0 : (this.#way.begin[first.index] as number), finish);
    }
    return true;
  }
}

/** Whether a stretch of the order holds all work of these pieces, and of others none for which no time was found. */
function isWhole(
  order: readonly BenchTask[],
  from: number,
  to: number,
  pieces: readonly BenchPiece[],
): boolean {
  for (let place = from; place < to; place++) {
    const { end, piece } = order[place] as BenchTask;
    if (end >= NEVER && !pieces.includes(piece)) return false;
  }
  return pieces.every(({ tasks }) =>
    tasks.every(({ running, position }) => running || (position >= from && position < to)),
  );
}

/** When the first of a piece's tasks to do begins. */
function beginOf({ tasks }: BenchPiece): Minutes {
  let begin = NEVER;
  for (const task of tasks) if (!task.running) begin = Math.min(begin, task.begin);
  return begin;
}

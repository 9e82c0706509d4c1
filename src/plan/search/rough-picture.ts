import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchPiece, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { isToDo } from "./order-of.ts";
import { pieceCost } from "./place-task.ts";
import { openMinute } from "./what-may-follow.ts";

/** Share of the open hours in which busy hands do steps; the rest goes into set-ups, and waits for air to clear. By trial. */
const AT_WORK = 0.65;

/** How much longer a piece takes among others than it would alone. By trial. */
const AMONG_OTHERS = 1.2;

/** By how many places of the sequence a piece is moved at most: looking through all takes the cube of the pieces else. */
const REACH = 40;

/**
 * About how long a plan lasts, and what it costs, before there is a good one. In this rough picture (aggregate planning: A.
 * Hax, H. Meal, Hierarchical integration of production planning and scheduling, 1975) pieces are whole. They go through the
 * hands in one sequence, take at least somewhat longer than each would alone, and wait for room under the limit on how many
 * are out. The sequence is searched for: it is what is to be decided here.
 */
export class RoughPicture {
  readonly #bench: Bench;
  /** The pieces that had tasks to do at first, in the order in which they have the hands. */
  #sequence: readonly BenchPiece[];
  /** By session: open minutes before it. */
  readonly #openBefore: Float64Array;
  /** By piece: open minutes that its work takes, and minutes from its first task still to do until it is finished. */
  readonly #work: Float64Array;
  readonly #span: Float64Array;
  /** For each that may be out: until when a piece is; at first, and as it goes on. */
  readonly #out: Float64Array;
  readonly #outThen: Float64Array;
  /** Nothing begins before that minute. */
  readonly #from: Minutes;
  /** Its session, and that in which the hands are as it goes on. */
  readonly #session: number;
  #sessionThen = 0;
  /** Open minutes before it, and before the hands are free as it goes on. */
  readonly #open: Minutes;
  #openThen = 0;
  /** What finished pieces cost. */
  #spent: number;

  /** @param bench one on which nothing has been played */
  constructor(bench: Bench) {
    this.#bench = bench;
    this.#sequence = bench.pieces
      .filter(({ tasks }) => tasks.some(isToDo))
      .sort((a, b) => a.due - b.due || a.index - b.index);
    const { calendar, pieces, mostOut } = bench;
    this.#openBefore = new Float64Array(calendar.opens.length + 1).fill(Number.POSITIVE_INFINITY);
    let open = 0;
    for (const [session, opens] of calendar.opens.entries()) {
      this.#openBefore[session] = open;
      open += Math.max(0, calendar.closing(session) - Math.max(0, opens));
    }
    this.#work = new Float64Array(pieces.length);
    this.#span = new Float64Array(pieces.length);
    this.#from = Math.max(openMinute(bench), calendar.opening(calendar.at(0)), 0);
    this.#session = calendar.at(this.#from);
    const opens = Math.max(0, calendar.opening(this.#session));
    this.#open = (this.#openBefore[this.#session] as number) + this.#from - opens;
    this.#spent = bench.extra;
    this.#out = new Float64Array(Math.min(pieces.length, mostOut ?? 0)).fill(this.#from);
    this.#outThen = new Float64Array(this.#out.length);
    let out = 0;
    for (const piece of pieces) {
      if (piece.left > 0) this.#readPiece(piece);
      else this.#spent += pieceCost(bench, piece, piece.leastFinish);
      if (!piece.begun || out >= this.#out.length) continue;
      const finish = piece.left > 0 ? this.#from + (this.#span[piece.index] as number) : piece.finish;
      if (finish > this.#from) this.#out[out++] = finish;
    }
  }

  #readPiece(piece: BenchPiece): void {
    const { calendar, horizon, hands } = this.#bench;
    const from = Math.max(this.#from, piece.release);
    let work = 0;
    let finish = piece.leastFinish;
    for (const task of piece.tasks) {
      if (!isToDo(task)) continue;
      work += task.minutes;
      const ready = readyAt(task, from);
      if (ready >= NEVER) continue;
      const need = task.mayStop ? 1 : task.minutes;
      const done = Math.min(horizon, calendar.meeting(ready, 0, need) + need);
      finish = Math.max(finish, done + task.tail, task.leastFinish[calendar.at(done - 1)] ?? 0);
    }
    this.#work[piece.index] = work / AT_WORK / hands.length;
    this.#span[piece.index] = (Math.min(horizon, finish) - from) * AMONG_OTHERS;
  }

  /** What the plan will cost. */
  cost(): number {
    return this.#costOf(this.#sequence, Number.POSITIVE_INFINITY);
  }

  /** When the last piece is finished. */
  get last(): Minutes {
    let last = this.#from;
    this.#goBack();
    for (const piece of this.#sequence) last = Math.max(last, this.#finishNext(piece));
    return last;
  }

  /** @returns no less than the ceiling, as soon as that much is known */
  #costOf(sequence: readonly BenchPiece[], ceiling: number): number {
    let cost = this.#spent;
    this.#goBack();
    for (let place = 0; place < sequence.length && cost < ceiling; place++) {
      const piece = sequence[place] as BenchPiece;
      cost += pieceCost(this.#bench, piece, this.#finishNext(piece));
    }
    return cost;
  }

  /** Back to where it begins. */
  #goBack(): void {
    this.#sessionThen = this.#session;
    this.#openThen = this.#open;
    this.#outThen.set(this.#out);
  }

  /** When a piece is finished that has the hands next. */
  #finishNext(piece: BenchPiece): Minutes {
    const { calendar, horizon } = this.#bench;
    const openBefore = this.#openBefore;
    this.#openThen += this.#work[piece.index] as number;
    while ((openBefore[this.#sessionThen + 1] as number) <= this.#openThen) this.#sessionThen++;
    const session = this.#sessionThen;
    const worked = Math.max(0, calendar.opening(session)) + this.#openThen - (openBefore[session] as number);
    return Math.min(horizon, Math.max(worked, this.#spanEnds(piece)));
  }

  /** When the piece is finished, if hands are free whenever it needs them; it takes its room under the limit. */
  #spanEnds({ index, release, begun, underLimit }: BenchPiece): Minutes {
    const from = Math.max(this.#from, release);
    const span = this.#span[index] as number;
    const out = this.#outThen;
    if (begun || !underLimit || out.length === 0) return from + span;
    let first = 0;
    for (let place = 1; place < out.length; place++) {
      if ((out[place] as number) < (out[first] as number)) first = place;
    }
    const end = Math.max(from, out[first] as number) + span;
    out[first] = end;
    return end;
  }

  /**
   * Puts each piece where it costs least in the sequence, as long as that helps.
   *
   * @param sweeps how often all are looked at
   */
  improve(sweeps: number): void {
    let least = this.cost();
    for (let sweep = 0; sweep < sweeps; sweep++) {
      const before = least;
      for (const piece of [...this.#sequence]) least = this.#putBest(piece, least);
      if (least >= before) return;
    }
  }

  #putBest(piece: BenchPiece, least: number): number {
    const now = this.#sequence.indexOf(piece);
    const trial = this.#sequence.toSpliced(now, 1);
    const first = Math.max(0, now - REACH);
    const last = Math.min(trial.length, now + REACH);
    let best = now;
    let leastCost = least;
    trial.splice(first, 0, piece);
    for (let place = first; ; place++) {
      const cost = this.#costOf(trial, leastCost);
      if (cost < leastCost) {
        leastCost = cost;
        best = place;
      }
      if (place === last) break;
      trial[place] = trial[place + 1] as BenchPiece;
      trial[place + 1] = piece;
    }
    if (best !== now) this.#sequence = this.#sequence.toSpliced(now, 1).toSpliced(best, 0, piece);
    return leastCost;
  }
}

/** When a task can begin for its waits, from a minute on; NEVER: something it waits for is still to do. */
function readyAt({ waits, release }: BenchTask, from: Minutes): Minutes {
  let ready = Math.max(from, release);
  for (const { on, windows } of waits) {
    if (isToDo(on)) return NEVER;
    const opens = windows[0]?.opens;
    if (opens !== undefined) ready = Math.max(ready, openingAfter(opens, on.end));
  }
  return ready;
}

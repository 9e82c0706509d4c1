import type { Minutes } from "../../time/instant.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { type Chain, type ChainStep, nextPlace, stepAt } from "./chain.ts";
import { extraOf, fillAir, pieceCost } from "./place-task.ts";
import type { Player } from "./play-order.ts";
import { costLate, costOn } from "./price-outlook.ts";
import type { PricedWays } from "./priced-ways.ts";
import { clearFor } from "./what-may-follow.ts";

/**
 * Foretells what a plan made so far will cost if one task or another goes next, at the prices of hands, hooks and room. So
 * that plans may be compared that come to different minutes, what passes of these counts as taken, at its price: the bound of
 * the Lagrangian relaxation without what is the same for all. The next step of each piece waits for clear air, too.
 */
export class NextOutlook {
  readonly #bench: Bench;
  readonly #ways: PricedWays;
  /** By piece: its number among the chains; -1: it has none. */
  readonly #chainOf: Int32Array;
  /** By start: what had passed by then is worth. */
  readonly #passed: Float64Array;
  /** By chain: the place of its next step in the root that stands, and as read. */
  readonly #rootPlaces: Int32Array;
  readonly #places: Int32Array;
  /** By chain, as read: the next step, when its windows are open and the air is clear, the first start then, and when these shut. */
  readonly #steps: (ChainStep | null)[];
  readonly #ready: Float64Array;
  readonly #opens: Int32Array;
  readonly #shuts: Float64Array;
  /** By start: what all pieces cost from then on, if it was asked for in this reading. */
  readonly #sums: Float64Array;
  readonly #summedIn: Int32Array;
  #reading = 0;
  /** By emission: when the air is clear of what must keep apart from it, once the task that is taken to go next is done. */
  readonly #clearAt: Minutes[];
  /** By need of clear air: when it is clear then, and as read. */
  readonly #clearThen: Int32Array;
  readonly #clear: Int32Array;
  /** The task that is taken to go next. */
  #trial: BenchTask | null = null;
  readonly #isPlayed: (task: BenchTask) => boolean;

  /** @param ways at prices that are settled */
  constructor(player: Player, ways: PricedWays) {
    const { bench } = player;
    const { chains, grid, scarce } = ways;
    const [hands, ...others] = scarce;
    const starts = grid.minutes.length;
    this.#bench = bench;
    this.#ways = ways;
    this.#chainOf = new Int32Array(bench.pieces.length).fill(-1);
    for (const [index, { piece }] of chains.entries()) this.#chainOf[piece.index] = index;
    this.#passed = new Float64Array(starts);
    for (const [start, minute] of grid.minutes.entries()) {
      this.#passed[start] = others.reduce(
        (sum, one) => sum + one.worthUpTo(minute),
        hands?.worthUpTo(grid.openBefore[start] as Minutes) ?? 0,
      );
    }
    this.#rootPlaces = new Int32Array(chains.length);
    this.#places = new Int32Array(chains.length);
    this.#steps = chains.map(() => null);
    this.#ready = new Float64Array(chains.length);
    this.#opens = new Int32Array(chains.length);
    this.#shuts = new Float64Array(chains.length);
    this.#sums = new Float64Array(starts);
    this.#summedIn = new Int32Array(starts);
    this.#clearAt = [...bench.clearAt];
    this.#clearThen = new Int32Array(bench.needs.length);
    this.#clear = new Int32Array(bench.needs.length);
    this.#isPlayed = (task) => task === this.#trial || player.isPlayed(task);
  }

  /** All that is read from now on has played what is played now. */
  noteRoot(): void {
    const { chains } = this.#ways;
    for (let index = 0; index < chains.length; index++) {
      this.#rootPlaces[index] = nextPlace((chains[index] as Chain).steps, this.#isPlayed, 0);
    }
  }

  /** Reads the bench as the play has left it. */
  read(): void {
    const { chains, grid } = this.#ways;
    const bench = this.#bench;
    this.#reading++;
    for (let need = 0; need < this.#clear.length; need++)
      this.#clear[need] = clearFor(bench, need, bench.clearAt);
    for (let index = 0; index < chains.length; index++) {
      const { steps } = chains[index] as Chain;
      const place = nextPlace(steps, this.#isPlayed, this.#rootPlaces[index] as number);
      const step = stepAt(steps, place);
      this.#places[index] = place;
      this.#steps[index] = step;
      if (step === null) continue;
      this.#ways.readWindows(step.task, this.#isPlayed);
      const ready = Math.max(this.#ways.opens, this.#clear[step.task.need] as Minutes);
      this.#ready[index] = ready;
      this.#opens[index] = grid.from(ready);
      this.#shuts[index] = this.#ways.shuts;
    }
  }

  /** What the plan will cost, as read. */
  cost(): number {
    const { clock, hands } = this.#bench;
    return this.#costFrom(this.#startAt(Math.max(clock, Math.min(...hands)))) + this.#bench.extra;
  }

  /** What it will cost if a task goes next that has been laid out on the bench as read. */
  costWith(task: BenchTask): number {
    const bench = this.#bench;
    const ways = this.#ways;
    const { grid, room } = ways;
    const free = handsFree(bench, task);
    const start = this.#startAt(free);
    const index = this.#chainOf[task.piece.index] as number;
    const isFilled = this.#fillAir(task);
    let cost = bench.extra + extraOf(bench, task);
    cost += isFilled ? this.#sumFrom(start, true) : this.#costFrom(start);
    if (index < 0) return cost;
    cost -= this.#costOfChain(index, start, isFilled);
    const chain = ways.chains[index] as Chain;
    const { piece, steps } = chain;
    const taken = room === null || !piece.underLimit ? null : room;
    const minute = grid.minutes[start] as Minutes;
    const gone = taken?.upTo(minute) ?? 0;
    this.#trial = task;
    const step = stepAt(steps, nextPlace(steps, this.#isPlayed, this.#places[index] as number));
    const ready = step === null ? 0 : (this.#clearThen[step.task.need] as Minutes);
    const next = step === null ? -1 : ways.bestStart(step, Math.max(free, ready), this.#isPlayed);
    this.#trial = null;
    cost -= gone;
    if (step !== null && next >= 0) return cost + (step.costs[next] as number);
    if (step !== null)
      return cost + costLate(bench, ways, chain, step, Math.max(minute, ready, ways.opens), ways.shuts);
    const finish = Math.min(bench.horizon, task.end + piece.cure);
    return cost + pieceCost(bench, piece, finish) + (taken?.upTo(Math.max(minute, finish)) ?? 0);
  }

  /** Finds when the air is clear once a task is done. @returns whether that is later for any need than as read */
  #fillAir(task: BenchTask): boolean {
    const bench = this.#bench;
    const clearAt = this.#clearAt;
    for (let other = 0; other < clearAt.length; other++) clearAt[other] = bench.clearAt[other] as Minutes;
    fillAir(bench, task, clearAt);
    let isFilled = false;
    for (let need = 0; need < this.#clearThen.length; need++) {
      const clear = clearFor(bench, need, clearAt);
      this.#clearThen[need] = clear;
      isFilled ||= clear > (this.#clear[need] as Minutes);
    }
    return isFilled;
  }

  /** The first start from a minute on, or the last of all. */
  #startAt(minute: Minutes): number {
    const { grid } = this.#ways;
    return Math.min(grid.from(minute), grid.minutes.length - 1);
  }

  #costFrom(start: number): number {
    if (this.#summedIn[start] !== this.#reading) {
      this.#sums[start] = this.#sumFrom(start, false);
      this.#summedIn[start] = this.#reading;
    }
    return this.#sums[start] as number;
  }

  /** @param isFilled in the air as it is once the task that is taken to go next is done, not as read */
  #sumFrom(start: number, isFilled: boolean): number {
    let sum = this.#passed[start] as number;
    for (let index = 0; index < this.#steps.length; index++) sum += this.#costOfChain(index, start, isFilled);
    return sum;
  }

  #costOfChain(index: number, start: number, isFilled: boolean): number {
    const ways = this.#ways;
    const step = this.#steps[index] as ChainStep | null;
    const chain = ways.chains[index] as Chain;
    const minute = ways.grid.minutes[start] as Minutes;
    if (step === null) return costOn(this.#bench, ways, chain, step, 0, minute);
    let from = Math.max(start, this.#opens[index] as number);
    let ready = Math.max(minute, this.#ready[index] as Minutes);
    if (isFilled) {
      ready = Math.max(ready, this.#clearThen[step.task.need] as Minutes);
      if (ready > (ways.grid.minutes[from] ?? NEVER)) from = ways.grid.from(ready);
    }
    const shuts = this.#shuts[index] as Minutes;
    const next = ways.bestWithin(step, from, shuts);
    const cost =
      next < 0 ? costLate(this.#bench, ways, chain, step, ready, shuts) : (step.costs[next] as number);
    return costOn(this.#bench, ways, chain, step, cost, minute);
  }
}

/** When a pair of hands is free again once a task is begun, as it has been laid out. */
function handsFree({ hands }: Bench, { begin, end }: BenchTask): Minutes {
  let free = 0;
  let next = end;
  for (let index = 0; index < hands.length; index++) {
    const until = hands[index] as Minutes;
    if (until <= begin) free++;
    else next = Math.min(next, until);
  }
  return free > 1 ? begin : next;
}

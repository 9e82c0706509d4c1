import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { type Chain, type ChainStep, lastStart, nextStep } from "./chain.ts";
import { pieceCost } from "./place-task.ts";
import { PricedWays } from "./priced-ways.ts";
import { clearFor } from "./what-may-follow.ts";

/** After so many looks in a row that bound plans no better steps get smaller, by this factor. */
const STALE = 3;
const SMALLER = 0.7;

/** Prices are varied by a fifth, as a rule, and at most to 0.55 or 1.8 times what they are (e to 1.5 times this). By trial. */
const AROUND = 0.4;

interface Options {
  /** About when the last piece is finished. */
  readonly until: Minutes;
  /** What some plan costs; Infinity: none is known, and nothing has a price. */
  readonly ceiling: number;
  /** Minutes between two starts that are looked at. */
  readonly every: Minutes;
  /** After so many looks the prices stay as they are. */
  readonly looks: number;
}

/**
 * Foretells what a plan made up to some minute will cost, so that plans made so far can be compared: every piece goes its own
 * best way on, at prices of hands, hooks and room by which all ways together take about as much as there is (Lagrangian
 * relaxation of the capacities: P. Luh, D. Hoitomt, Scheduling of manufacturing systems using the Lagrangian relaxation
 * technique, IEEE Trans. Automatic Control 38, 1993). Prices are found look by look, each in the direction in which too much
 * is taken, and somewhat on in the one before it (deflected subgradients: P. Camerini, L. Fratta, F. Maffioli, On improving
 * relaxation methods by modified gradient techniques, Mathematical Programming Study 3, 1975; with the step of B. Polyak,
 * 1969: M. Held, P. Wolfe, H. Crowder, Validation of subgradient optimization, Mathematical Programming 6, 1974; all from
 * memory).
 */
export class PriceOutlook {
  readonly #bench: Bench;
  /** The ways of all pieces, at the prices as they are. */
  readonly ways: PricedWays;
  readonly #ceiling: number;
  readonly #lastLook: number;
  /** The most that any prices so far have told the whole plan to cost. */
  #most = Number.NEGATIVE_INFINITY;
  #stale = 0;
  /** How far the next step goes of what would be right if all prices were wrong alike. */
  #reach = 1;
  #looks = 0;

  constructor(bench: Bench, { until, ceiling, every, looks }: Options) {
    this.#bench = bench;
    this.ways = new PricedWays(bench, until, every);
    this.#ceiling = ceiling;
    this.#lastLook = looks;
  }

  get isSettled(): boolean {
    return this.#looks === this.#lastLook;
  }

  /** Looks at what all pieces would take at the prices as they are, and makes these better. */
  look(): void {
    const { chains, scarce } = this.ways;
    for (const one of scarce) one.clear();
    const told = this.#solveAll((chain) => this.ways.take(chain));
    if (told > this.#most) {
      this.#most = told;
      this.#stale = 0;
      for (const one of scarce) one.keep();
    } else if (++this.#stale === STALE) {
      this.#reach *= SMALLER;
      this.#stale = 0;
    }
    this.#looks++;
    const steepness = scarce.reduce((sum, one) => sum + one.steer(), 0);
    const isAsDear = told >= this.#ceiling || this.#ceiling === Number.POSITIVE_INFINITY;
    if (steepness === 0 || isAsDear || chains.length === 0) this.#looks = this.#lastLook;
    // A plan that costs more than twice what is told would make the steps too long.
    const gap = Math.min(this.#ceiling - told, this.#most);
    if (this.isSettled) this.#settle();
    else for (const one of scarce) one.adjust((this.#reach * gap) / steepness);
  }

  #settle(): void {
    for (const one of this.ways.scarce) one.restore(1);
    this.#solveAll(() => {});
  }

  /** Tells by prices around those found from now on, of all that is scarce each its own share higher or lower. */
  vary(chance: Chance): void {
    for (const one of this.ways.scarce)
      one.restore(Math.exp(AROUND * (chance() + chance() + chance() - 1.5)));
    this.#solveAll(() => {});
  }

  /** @returns what a plan costs at least, as far as the ways tell */
  #solveAll(then: (chain: Chain) => void): number {
    const { chains, scarce } = this.ways;
    let told = 0;
    this.ways.reprice();
    for (const chain of chains) {
      told += this.ways.solve(chain);
      then(chain);
    }
    return scarce.reduce((sum, one) => sum - one.worth, told);
  }

  /**
   * What the plan made up to a minute will cost, but for what is the same of all made up to it, if nothing more begins before
   * that minute and each piece then goes its best way. What room costs is counted from then on.
   */
  cost(from: Minutes, isPlayed: (task: BenchTask) => boolean): number {
    const { ways } = this;
    const bench = this.#bench;
    let sum = bench.extra;
    for (let index = 0; index < ways.chains.length; index++) {
      const chain = ways.chains[index] as Chain;
      const step = nextStep(chain.steps, isPlayed);
      let cost = 0;
      if (step !== null) {
        const ready = Math.max(from, clearFor(bench, step.task.need, bench.clearAt));
        const start = ways.bestStart(step, ready, isPlayed);
        cost =
          start < 0
            ? costLate(bench, ways, chain, step, Math.max(ready, ways.opens), ways.shuts)
            : (step.costs[start] as number);
      }
      sum += costOn(bench, ways, chain, step, cost, from);
    }
    return sum;
  }

  /** Ranks what is still to do of each piece by when it begins, if the piece goes its best way from a minute on, or its last. */
  rank(from: Minutes, isPlayed: (task: BenchTask) => boolean, rank: Float64Array): void {
    const { chains, grid } = this.ways;
    for (let index = 0; index < chains.length; index++) {
      const { steps } = chains[index] as Chain;
      const first = nextStep(steps, isPlayed);
      if (first === null) continue;
      let start = this.ways.bestStart(first, from, isPlayed);
      if (start < 0) start = lastStart(first);
      for (let place = steps.indexOf(first); place < steps.length; place++) {
        const { task, next } = steps[place] as ChainStep;
        rank[task.index] = grid.minutes[start] as Minutes;
        start = next[start] as number;
      }
    }
  }
}

/**
 * What a piece costs that goes on with its next step, at the prices; of room only what it takes after a minute.
 *
 * @param step null: all its steps were played
 * @param cost what it costs from that step on
 */
export function costOn(
  bench: Bench,
  { room }: PricedWays,
  { piece }: Chain,
  step: ChainStep | null,
  cost: number,
  from: Minutes,
): number {
  const taken = piece.underLimit && piece.begun ? room : null;
  const gone = taken?.upTo(from) ?? 0;
  if (step !== null) return cost - gone;
  const { leastFinish } = piece;
  return pieceCost(bench, piece, leastFinish) + (taken?.upTo(Math.max(from, leastFinish)) ?? 0) - gone;
}

/**
 * What a piece costs from a step on that has no start: as if finished at the horizon if its windows have shut; if it only
 * comes after the last start that is looked at, as much more than from there as it is later.
 *
 * @param ready when the step could begin
 * @param shuts by when it has to
 */
export function costLate(
  bench: Bench,
  { grid: { minutes } }: PricedWays,
  { piece }: Chain,
  step: ChainStep,
  ready: Minutes,
  shuts: Minutes,
): number {
  const lost = pieceCost(bench, piece, bench.horizon);
  const last = lastStart(step);
  const later = ready - (minutes[last] as Minutes);
  if (later <= 0 || ready > shuts) return lost;
  const finish = (minutes[minutes.length - 1] as Minutes) + piece.cure;
  const dearer = pieceCost(bench, piece, finish + later) - pieceCost(bench, piece, finish);
  return Math.min(lost, (step.costs[last] as number) + dearer);
}

import type { Chance } from "../chance.ts";
import { Beam } from "./beam.ts";
import { firstRules } from "./first-orders.ts";
import { type Move, makeMoves } from "./moves.ts";
import { nameWork } from "./name-work.ts";
import type { Player } from "./play-order.ts";
import type { PriceOutlook } from "./price-outlook.ts";
import { pricesFor } from "./prices-for.ts";
import { Recreate } from "./recreate.ts";
import { RuleSearch } from "./rule-search.ts";
import { playByRank, type Rank } from "./simple-orders.ts";
import { type Size, sizeOf } from "./size.ts";
import type { Solution } from "./solution.ts";

/** Rounds of a short cooling; of many tasks a beam finds more in the time, so the first is over soon. */
const COOLING = { few: 2000, more: 3000, many: 30 };

/** How much longer each long cooling is than the one before it. By trial. */
const LONGER = { few: 4 / 3, more: 4 / 3, many: 1.15 };

/** Tasks that a move plays, until it is known. */
const USUAL_EFFORT = 50;

/** What share of the work each move has at least, of what all have by their worth. */
const LEAST_SHARE = 0.03;

/** How many plans the first beam keeps, which is to be over soon, and those after it. */
const WIDTH = { first: 5, later: 14 };

/** Unless tasks are many, so many beams come before the first cooling at most, as long as each finds a better plan. */
const MOST_FIRST = 3;

/**
 * How much dearer than the plan that stands a plan may be in the beginning, as a share of it over the root of its tasks;
 * less of more, or what a beam found would be undone, and of many, for which there is no time to come down again.
 */
const HEAT = { few: 0.03, more: 0.008, many: 0.003 };

interface Options {
  /** What to try first of all. */
  readonly ranks: readonly Rank[];
  /** Then goes on with dispatching rules. */
  readonly withRules: boolean;
  /** By piece: the first that is just like it; asked for once a beam begins. */
  readonly alike: () => readonly number[];
}

/**
 * Searches for better orders, round by round: first by dispatching rules, then by moves upon the best order, accepted
 * by simulated annealing (S. Kirkpatrick, C. Gelatt, M. Vecchi, Optimization by simulated annealing, Science 220, 1983)
 * in coolings that grow longer. Moves that pay are drawn more often (adaptive large neighbourhoods: S. Ropke, D.
 * Pisinger, Transportation Science 40, 2006). Everything depends on the rounds, nothing on a clock.
 */
export class Anneal {
  readonly #player: Player;
  readonly #chance: Chance;
  readonly #moves: readonly Move[];
  /** By move: what it brought lately for the work it took. */
  readonly #worth: number[];
  /** By move: the work that it took lately, each time. */
  readonly #effort: number[];
  /** By move: the chances of all up to it. */
  readonly #upTo: number[] = [];
  readonly #recreate: Recreate;
  /** Ways to rank all work that are still to be tried, the last one first; then come the rules. */
  readonly #ranks: Rank[];
  readonly #rules: RuleSearch;
  /** Rules come before moves. */
  #byRules: boolean;
  readonly #size: Size;
  /** The beam that is at hand; there is none where tasks are few. */
  #beam: Beam | null = null;
  #beams = 0;
  /** By what beams tell what plans will cost. */
  #prices: PriceOutlook | null = null;
  /** By what they tell plans that have done the same work. */
  #names: Float64Array | null = null;
  readonly #alike: () => readonly number[];
  /** The best found so far. */
  best: Solution;
  #round = 0;
  #coolings = 0;
  /** Rounds of the cooling at hand, and of the longest. */
  #length: number;
  #longest: number;
  readonly #short: number;
  readonly #heat: number;

  /** @param player one with an order that stands */
  constructor(player: Player, chance: Chance, { ranks, withRules, alike }: Options) {
    this.#player = player;
    this.#chance = chance;
    this.#alike = alike;
    this.#recreate = new Recreate(player);
    this.#ranks = ranks.toReversed();
    this.#rules = new RuleSearch(player, this.#recreate, chance);
    this.#byRules = withRules;
    this.#size = sizeOf(player.bench.tasks.length);
    this.#short = COOLING[this.#size];
    this.#heat = HEAT[this.#size];
    this.#length = this.#short;
    this.#longest = this.#short;
    this.#moves = makeMoves(player, chance, this.#rules);
    this.#worth = this.#moves.map(() => 1);
    this.#effort = this.#moves.map(() => USUAL_EFFORT);
    this.best = player.solution();
  }

  /** One round. @returns whether a better order was found */
  round(): boolean {
    const rank = this.#ranks.pop();
    if (rank !== undefined) return this.#tryRank(rank);
    if (this.#byRules) return this.#tryRule();
    if (this.#beam === null && this.#round >= this.#length) this.#beginCooling();
    if (this.#prices?.isSettled === false) {
      this.#prices.look();
      return false;
    }
    if (this.#beam !== null) return this.#widen(this.#beam);
    this.#round++;
    return this.#tryMove();
  }

  /** The order that stands now was found elsewhere: goes on from it. */
  takeOver(): void {
    if (this.#player.cost < this.best.cost) this.best = this.#player.solution();
  }

  /** The next beam, unless tasks are few; the order that stands will be lost. */
  #beginBeam(): void {
    if (this.#size === "few") return;
    const player = this.#player;
    const width = this.#beams++ === 0 ? WIDTH.first : WIDTH.later;
    // By the same prices every beam would come to much the same plan.
    if (this.#prices === null) this.#prices = pricesFor(player);
    else this.#prices.vary(this.#chance);
    this.#names ??= nameWork(player.bench, this.#alike(), this.#chance);
    const options = { width, prices: this.#prices, names: this.#names };
    this.#beam = new Beam(player, this.#recreate, this.#chance, firstRules(player.bench), options);
  }

  /** Goes on with a beam; at its end the best plan stands, or the beam's own for a cooling from a new one. */
  #widen(beam: Beam): boolean {
    beam.round();
    if (!beam.isOver) return false;
    this.#beam = null;
    const player = this.#player;
    const found = beam.best;
    if (found !== null) player.adopt(found);
    const better = found !== null && player.cost < this.best.cost;
    if (better) this.best = player.solution();
    const isFirst = this.#coolings === 0;
    if (found === null || this.#size === "many" || isFirst) player.adopt(this.best);
    if (better && isFirst && this.#size === "more" && this.#beams < MOST_FIRST) this.#beginBeam();
    return better;
  }

  /**
   * Two short coolings from new orders, so as not to stay in one valley; then a longer one from the best. A new order is a
   * rule's, or unless tasks are few a beam's. Of many tasks all coolings are longer ones, with a beam between them.
   */
  #beginCooling(): void {
    const player = this.#player;
    this.#round = 0;
    this.#coolings++;
    const isLong = this.#coolings % 3 === 0 || this.#size === "many";
    if (isLong) this.#longest = Math.ceil(this.#longest * LONGER[this.#size]);
    this.#length = isLong ? this.#longest : this.#short;
    if (this.#size === "few" && !isLong) {
      const cost = this.#rules.playFar();
      if (cost < Number.POSITIVE_INFINITY) {
        player.accept(cost);
        return;
      }
    }
    player.adopt(this.best);
    if (this.#size === "many" || !isLong) this.#beginBeam();
  }

  #tryRank(rank: Rank): boolean {
    const player = this.#player;
    const cost = playByRank(rank, player, this.#recreate, this.best.cost);
    const better = cost < this.best.cost;
    if (better) {
      player.accept(cost);
      this.best = player.solution();
    }
    player.adopt(this.best);
    return better;
  }

  #tryRule(): boolean {
    const player = this.#player;
    const cost = this.#rules.round();
    const better = cost < this.best.cost;
    if (better) {
      player.accept(cost);
      this.best = player.solution();
    }
    this.#byRules = !this.#rules.isOver;
    if (!this.#byRules) {
      player.adopt(this.best);
      this.#beginBeam();
    }
    return better;
  }

  #tryMove(): boolean {
    const player = this.#player;
    const number = this.#drawMove();
    const move = this.#moves[number] as Move;
    const heat =
      (this.#heat * player.cost * (1 - this.#round / this.#length) ** 2) / Math.sqrt(player.order.length);
    const ceiling = player.cost - heat * Math.log(1 - this.#chance());
    const work = player.steps;
    const before = player.cost;
    const cost = move.play(ceiling);
    if (cost > ceiling) player.reject();
    else player.accept(cost);
    const better = player.cost < this.best.cost;
    const gain = better ? 20 : player.cost < before ? 4 : 0;
    const effort = 0.98 * (this.#effort[number] as number) + 0.02 * (10 + player.steps - work);
    this.#effort[number] = effort;
    this.#worth[number] = 0.99 * (this.#worth[number] as number) + gain / effort;
    if (better) this.best = player.solution();
    return better;
  }

  /** Each move has its share of the work by what it brings for it, and none less than a little. */
  #drawMove(): number {
    const [worth, effort, upTo] = [this.#worth, this.#effort, this.#upTo];
    let total = 0;
    for (let number = 0; number < worth.length; number++) total += worth[number] as number;
    let sum = 0;
    for (let number = 0; number < worth.length; number++) {
      sum += (LEAST_SHARE + (worth[number] as number) / total) / (effort[number] as number);
      upTo[number] = sum;
    }
    const draw = sum * this.#chance();
    let drawn = 0;
    while (drawn < upTo.length - 1 && draw >= (upTo[drawn] as number)) drawn++;
    return drawn;
  }
}

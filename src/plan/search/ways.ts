import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import type { BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { type Rule, rankBy, varyRule } from "./first-orders.ts";
import { holdSome } from "./hold-work.ts";
import type { Player } from "./play-order.ts";
import type { PriceOutlook } from "./price-outlook.ts";
import type { Recreate } from "./recreate.ts";
import { makeStyle, type Style } from "./style.ts";

/** Ranked by the prices, each piece goes sooner or later by half so many minutes at most. By trial. */
const AROUND: Minutes = 2000;

/** In what share of the rules room counts, or hooks, and for how much at most. By trial. */
const SPARING = { share: 0.12, most: 10 };

interface Options {
  /** The rules of which others are drawn. */
  readonly rules: readonly Rule[];
  readonly prices: PriceOutlook;
  /** In what share of the ways work is ranked by the prices, and some of it held. */
  readonly priced: number;
  readonly held: number;
}

/** Draws ways in which a plan may go on through a stretch of bench time. */
export class Ways {
  readonly #player: Player;
  readonly #recreate: Recreate;
  readonly #chance: Chance;
  readonly #options: Options;
  /** By task: when it begins at the prices, after the plan that stands, or did when it was still to do; NEVER: not at all. */
  readonly #priced: Float64Array;
  #isPriced = false;

  constructor(player: Player, recreate: Recreate, chance: Chance, options: Options) {
    this.#player = player;
    this.#recreate = recreate;
    this.#chance = chance;
    this.#options = options;
    this.#priced = new Float64Array(player.bench.tasks.length).fill(NEVER);
  }

  /** From now on ways go on from the plan that stands. */
  begin(): void {
    this.#isPriced = false;
  }

  /**
   * Ranks work for one way, and holds some of it.
   *
   * @param tasks those that may come free in the stretch: at least one
   * @returns in what style they are to be put in
   */
  draw(tasks: readonly BenchTask[], from: Minutes, until: Minutes): Style {
    const { prices, priced, held } = this.#options;
    const chance = this.#chance;
    const rule = this.#drawRule();
    if (chance() < priced) this.#rankByPrices(prices, tasks, from);
    else rankBy(rule, this.#player.bench, this.#recreate, tasks);
    if (chance() < held) holdSome(tasks, from, until, chance);
    return rule.style;
  }

  /**
   * A rule some way from one of the first, by which now and then room and hooks are spared. None waits for a piece's turn:
   * of some ways the outlook tells which is best.
   */
  #drawRule(): Rule {
    const chance = this.#chance;
    const { rules } = this.#options;
    const rule = rules[Math.floor(chance() * rules.length)] as Rule;
    const varied = varyRule(varyRule(rule, chance), chance);
    const counts = (): number => (chance() < SPARING.share ? SPARING.most * chance() : 0);
    const style = makeStyle({ ...varied.style, airCounts: counts(), hookCounts: counts(), inTurn: null });
    return { ...varied, style };
  }

  /** Ranks by when tasks begin at the prices, each piece somewhat sooner or later. */
  #rankByPrices(prices: PriceOutlook, tasks: readonly BenchTask[], from: Minutes): void {
    const [player, chance, priced] = [this.#player, this.#chance, this.#priced];
    const { rank, bonus } = this.#recreate;
    if (!this.#isPriced) {
      prices.rank(from, (task) => player.isPlayed(task), priced);
      this.#isPriced = true;
    }
    // With what is lifted others may come free, too.
    rank.set(priced);
    const around = AROUND * chance() * chance();
    const later = player.bench.pieces.map(() => around * (chance() - 0.5));
    for (let place = 0; place < tasks.length; place++) {
      const { index, piece } = tasks[place] as BenchTask;
      rank[index] = (rank[index] as number) + (later[piece.index] as number);
      bonus[index] = 0;
    }
  }
}

import type { Chance } from "../chance.ts";
import { dispatchBy, firstRules, type Rule, varyRule } from "./first-orders.ts";
import type { Player } from "./play-order.ts";
import type { Recreate } from "./recreate.ts";
import { sizeOf } from "./size.ts";

/** How many rules are tried: fewer where beams come after them. */
const RULES = { few: 60, more: 20, many: 1 };

/** How often a rule is varied to begin a cooling from something new. */
const FAR = 8;

/**
 * Looks for a dispatching rule that suits the shop: the first rules, then the best of them with what it weighs changed
 * a little, again and again (hyper-heuristics: E. Burke et al., A survey of the state of the art, J. Operational
 * Research Society 64, 2013).
 */
export class RuleSearch {
  readonly #player: Player;
  readonly #recreate: Recreate;
  readonly #chance: Chance;
  readonly #first: Rule[];
  #left: number;
  #cost = Number.POSITIVE_INFINITY;
  /** The rule that did best. */
  best: Rule;

  constructor(player: Player, recreate: Recreate, chance: Chance) {
    this.#player = player;
    this.#recreate = recreate;
    this.#chance = chance;
    const { tasks } = player.bench;
    this.#first = firstRules(player.bench).reverse();
    this.best = this.#first.at(-1) as Rule;
    this.#left = RULES[sizeOf(tasks.length)];
  }

  get isOver(): boolean {
    return this.#left === 0;
  }

  /** Plays one rule more. @returns what its order costs; Infinity: more than that of the best, or it cannot be */
  round(): number {
    this.#left--;
    const rule = this.#first.pop() ?? varyRule(this.best, this.#chance);
    const cost = dispatchBy(rule, this.#player, this.#recreate, this.#cost);
    if (cost <= this.#cost) {
      this.best = rule;
      this.#cost = cost;
    }
    return cost;
  }

  /** Plays a rule some way from the best. @returns as `round` does */
  playFar(): number {
    let rule = this.best;
    for (let times = 0; times < FAR; times++) rule = varyRule(rule, this.#chance);
    return dispatchBy(rule, this.#player, this.#recreate, Number.POSITIVE_INFINITY);
  }
}

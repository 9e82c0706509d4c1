import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchTask, BenchWait } from "./bench.ts";
import { stretchEnds } from "./bench-stretches.ts";
import { NEVER } from "./calendar.ts";
import { type Rule, rankBy, varyRule } from "./first-orders.ts";
import { holdSome } from "./hold-work.ts";
import { isToDo } from "./order-of.ts";
import type { Outlook } from "./outlook.ts";
import type { Player } from "./play-order.ts";
import type { PriceOutlook } from "./price-outlook.ts";
import type { Recreate } from "./recreate.ts";
import { type Solution, solutionOf } from "./solution.ts";
import { makeStyle } from "./style.ts";

/** In how many ways the empty plan goes on. */
const FIRST_WAYS = 48;

/**
 * By what foretells: about how many minutes are planned at a time, in how many ways each plan made so far goes on at most, and
 * how many in a row that come to nothing new are the last; in what share of them work is ranked by the prices, and some of it
 * held. By trial.
 */
const MANNERS = {
  prices: { stretch: 240, ways: 48, stale: 12, priced: 0.5, held: 0.75 },
  both: { stretch: 480, ways: 24, stale: 3, priced: 0.2, held: 0 },
  pieces: { stretch: 480, ways: 12, stale: 12, priced: 0, held: 0 },
};

/** Ranked by the prices, each piece goes sooner or later by half so many minutes at most. By trial. */
const AROUND: Minutes = 2000;

/** In what share of the rules room counts, or hooks, and for how much at most. By trial. */
const SPARING = { share: 0.12, most: 10 };

/** What differs by less in its outlook has done the same work on other pieces that are just like these. */
const SAME = 0.5;

/** How often the outlook's first sequence is looked through. */
const SWEEPS = 20;

/** A plan made up to some minute, and what it will cost. */
interface Beginning {
  readonly made: Solution;
  readonly outlook: number;
  /** What was done of each piece: by prices, only the best that has done the same is kept. */
  readonly work: string;
}

interface Options {
  /** How many plans are kept from stretch to stretch. */
  readonly width: number;
  /** False: the order that stands stays as it is up to the end of a stretch drawn by chance. */
  readonly fromStart: boolean;
  /** What foretells what plans will cost: one of them, or the mean of both. */
  readonly outlook: Outlook | null;
  readonly prices: PriceOutlook | null;
}

/**
 * Plans one stretch of bench time after the other: each of a few plans made so far goes on in several ways, by
 * dispatching rules drawn anew for every stretch, and those of the best outlook are kept (filtered beam search: P. Ow, T.
 * Morton, Filtered beam search in scheduling, Int. J. Production Research 26, 1988).
 */
export class Beam {
  readonly #player: Player;
  readonly #recreate: Recreate;
  readonly #chance: Chance;
  readonly #rules: readonly Rule[];
  readonly #width: number;
  readonly #tasks: readonly BenchTask[];
  readonly #outlook: Outlook | null;
  readonly #prices: PriceOutlook | null;
  readonly #manner: (typeof MANNERS)["prices"];
  /** By task still to do: a minute before which it cannot begin. */
  readonly #soonest: Float64Array;
  /** Minutes at which stretches end, the next one last. */
  readonly #ends: Minutes[];
  #from: Minutes;
  /** How many tasks were planned before. */
  readonly #made: number;
  #beginnings: Beginning[];
  /** How many of them have gone on. */
  #done = 0;
  /** What they have come to, best outlook first. */
  #next: Beginning[] = [];
  /** The outlooks of what it has come to. */
  readonly #outlooks = new Set<number>();

  /** @param rules the rules of which others are drawn */
  constructor(
    player: Player,
    recreate: Recreate,
    chance: Chance,
    rules: readonly Rule[],
    { width, fromStart, outlook, prices }: Options,
  ) {
    this.#player = player;
    this.#recreate = recreate;
    this.#chance = chance;
    this.#rules = rules;
    this.#width = width;
    this.#tasks = player.bench.tasks.filter(isToDo);
    this.#outlook = outlook;
    this.#prices = prices;
    this.#manner = outlook === null ? MANNERS.prices : prices === null ? MANNERS.pieces : MANNERS.both;
    this.#soonest = new Float64Array(player.bench.tasks.length);
    const ends = stretchEnds(player.bench, this.#manner.stretch);
    this.#from = fromStart ? 0 : drawEnd(ends, player, chance);
    this.#ends = ends.filter((end) => end > this.#from).reverse();
    const made = solutionOf(player.order.slice(0, player.placeAt(this.#from)), 0);
    this.#made = made.order.length;
    this.#beginnings = [{ made, outlook: 0, work: "" }];
  }

  /** The best plan, once it is whole; null: not yet, or all came to an end that no task could follow. */
  get best(): Solution | null {
    return this.isOver ? (this.#beginnings[0]?.made ?? null) : null;
  }

  /** What is not whole by then is foretold to cost more. */
  get isOver(): boolean {
    const [best] = this.#beginnings;
    return this.#done === 0 && (best === undefined || this.#isWhole(best));
  }

  #isWhole({ made }: Beginning): boolean {
    return made.order.length === this.#tasks.length;
  }

  /** Lets one plan go on by a stretch; the player's order that stands is lost. */
  round(): void {
    const beginning = this.#beginnings[this.#done] as Beginning;
    if (this.#isWhole(beginning)) this.#keep(beginning);
    else this.#goOn(beginning);
    this.#done++;
    if (this.#done < this.#beginnings.length) return;
    this.#done = 0;
    this.#beginnings = this.#next;
    this.#next = [];
    this.#from = this.#ends.pop() ?? NEVER;
  }

  #goOn({ made }: Beginning): void {
    const player = this.#player;
    const isFirst = made.order.length === this.#made;
    const until = this.#ends.at(-1) ?? NEVER;
    player.adopt(made);
    const outs = this.#within(until);
    if (this.#done === 0) {
      this.#outlook?.read(this.#from, (task) => player.isPlayed(task));
      this.#outlook?.improve(isFirst ? SWEEPS : 1);
    }
    this.#outlooks.clear();
    const ways = isFirst ? FIRST_WAYS : this.#manner.ways;
    const mostStale = isFirst ? ways : this.#manner.stale;
    for (let way = 0, stale = 0; way < ways && stale < mostStale; way++) {
      const before = this.#outlooks.size;
      this.#tryWay(outs, until);
      stale = this.#outlooks.size > before ? 0 : stale + 1;
    }
  }

  /** Lets the plan that goes on do so by one rule. */
  #tryWay(outs: readonly BenchTask[], until: Minutes): void {
    const player = this.#player;
    const rule = this.#drawRule();
    rankBy(rule, player.bench, this.#recreate, outs);
    if (this.#prices !== null && this.#chance() < this.#manner.priced) this.#rankByPrices(this.#prices, outs);
    if (this.#chance() < this.#manner.held) {
      const { calendar } = player.bench;
      const opens = Math.max(this.#from, calendar.opening(calendar.at(this.#from)));
      holdSome(outs, opens, until, this.#chance);
    }
    const cost = this.#recreate.play(outs, NEVER, Number.POSITIVE_INFINITY, rule.style, until);
    if (cost < Number.POSITIVE_INFINITY) this.#judge(until);
    player.reject();
    for (const task of outs) player.kept.restore(task);
  }

  /** Ranks anew by when tasks begin at the prices, each piece somewhat sooner or later. */
  #rankByPrices(prices: PriceOutlook, tasks: readonly BenchTask[]): void {
    const [player, chance] = [this.#player, this.#chance];
    const { rank, bonus } = this.#recreate;
    prices.rank(this.#from, (task) => player.isPlayed(task), rank);
    const around = AROUND * chance() * chance();
    const later = player.bench.pieces.map(() => around * (chance() - 0.5));
    for (let place = 0; place < tasks.length; place++) {
      const { index, piece } = tasks[place] as BenchTask;
      rank[index] = (rank[index] as number) + (later[piece.index] as number);
      bonus[index] = 0;
    }
  }

  /** The tasks still to do that may come free before a minute, as far as waits and work alone tell. */
  #within(until: Minutes): BenchTask[] {
    const soonest = this.#soonest;
    const within: BenchTask[] = [];
    for (let number = 0; number < this.#tasks.length; number++) {
      const task = this.#tasks[number] as BenchTask;
      if (task.position >= 0) continue;
      let begin = task.release - (task.setUp?.minutes ?? 0);
      let comesFree = true;
      for (let index = 0; index < task.waits.length && comesFree; index++) {
        const { on, windows } = task.waits[index] as BenchWait;
        const isPlayed = !isToDo(on) || on.position >= 0;
        comesFree = isPlayed || (soonest[on.index] as number) < until;
        const end = isPlayed ? on.end : (soonest[on.index] as number) + on.minutes;
        const window = windows[0];
        const opens = window !== undefined && window.lead === 0 ? openingAfter(window.opens, end) : end;
        begin = Math.max(begin, opens - (task.setUp?.minutes ?? 0));
      }
      soonest[task.index] = comesFree ? begin : NEVER;
      if (comesFree) within.push(task);
    }
    return within;
  }

  /**
   * A rule some way from one of the first, by which now and then room and hooks are spared. None waits for a piece's turn:
   * of some ways the outlook tells which is best.
   */
  #drawRule(): Rule {
    const chance = this.#chance;
    const rule = this.#rules[Math.floor(chance() * this.#rules.length)] as Rule;
    const varied = varyRule(varyRule(rule, chance), chance);
    const counts = (): number => (chance() < SPARING.share ? SPARING.most * chance() : 0);
    const style = makeStyle({ ...varied.style, airCounts: counts(), hookCounts: counts(), inTurn: null });
    return { ...varied, style };
  }

  /** Keeps what was just played if its outlook is among the best. */
  #judge(until: Minutes): void {
    const player = this.#player;
    const outlook = this.#foretell(until);
    this.#outlooks.add(outlook);
    const worst = this.#next[this.#width - 1]?.outlook ?? Number.POSITIVE_INFINITY;
    if (outlook >= worst) return;
    const work = workDone(player.bench);
    const alike = this.#next.findIndex(
      (other) => Math.abs(other.outlook - outlook) < SAME || (this.#prices !== null && other.work === work),
    );
    if (alike >= 0) {
      if ((this.#next[alike] as Beginning).outlook <= outlook) return;
      this.#next.splice(alike, 1);
    }
    this.#keep({ made: player.played(), outlook, work });
  }

  /** What the plan will cost that was just played up to a minute. */
  #foretell(until: Minutes): number {
    const isPlayed = (task: BenchTask): boolean => this.#player.isPlayed(task);
    this.#outlook?.read(until, isPlayed);
    const byPieces = this.#outlook?.cost() ?? null;
    const byPrices = this.#prices?.cost(until, isPlayed) ?? null;
    if (byPieces === null || byPrices === null) return byPieces ?? byPrices ?? 0;
    return (byPieces + byPrices) / 2;
  }

  #keep(beginning: Beginning): void {
    const place = this.#next.findIndex(({ outlook }) => outlook > beginning.outlook);
    this.#next.splice(place < 0 ? this.#next.length : place, 0, beginning);
    this.#next.length = Math.min(this.#next.length, this.#width);
  }
}

/** The end of a stretch before the last task of the order that stands is begun. */
function drawEnd(ends: readonly Minutes[], { order, kept }: Player, chance: Chance): Minutes {
  const last = order.at(-1);
  const until = last === undefined ? 0 : kept.begin(last);
  const drawn = ends.filter((end) => end < until);
  return drawn[Math.floor(chance() * drawn.length)] ?? 0;
}

/** What was played of each piece, but for the order of it. */
function workDone({ pieces }: Bench): string {
  return pieces.map(({ left }) => left).join(" ");
}

import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { type Rule, rankBy, varyRule } from "./first-orders.ts";
import { isToDo } from "./order-of.ts";
import { Outlook } from "./outlook.ts";
import type { Player } from "./play-order.ts";
import type { Recreate } from "./recreate.ts";
import { type Solution, solutionOf } from "./solution.ts";
import { makeStyle } from "./style.ts";

/** In how many ways each plan made so far goes on, and the empty one. */
const WAYS = 12;
const FIRST_WAYS = 48;

/** About how many minutes of bench time are planned at a time; a shorter session is planned whole. */
const STRETCH: Minutes = 480;

/** In what share of the rules room counts, or hooks, and for how much at most. By trial. */
const SPARING = { share: 0.12, most: 10 };

/** How often the outlook's first sequence is looked through. */
const SWEEPS = 20;

/** A plan made up to some minute, and what it will cost. */
interface Beginning {
  readonly made: Solution;
  readonly outlook: number;
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
  readonly #outlook: Outlook;
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

  /**
   * @param rules the rules of which others are drawn
   * @param options.width how many plans are kept from stretch to stretch
   * @param options.fromStart false: the order that stands stays as it is up to the end of a stretch drawn by chance
   */
  constructor(
    player: Player,
    recreate: Recreate,
    chance: Chance,
    rules: readonly Rule[],
    { width, fromStart }: { readonly width: number; readonly fromStart: boolean },
  ) {
    this.#player = player;
    this.#recreate = recreate;
    this.#chance = chance;
    this.#rules = rules;
    this.#width = width;
    this.#tasks = player.bench.tasks.filter(isToDo);
    this.#outlook = new Outlook(player.bench);
    this.#soonest = new Float64Array(player.bench.tasks.length);
    const ends = endsOfStretches(player.bench);
    this.#from = fromStart ? 0 : drawEnd(ends, player, chance);
    this.#ends = ends.filter((end) => end > this.#from).reverse();
    const made = solutionOf(player.order.slice(0, player.placeAt(this.#from)), 0);
    this.#made = made.order.length;
    this.#beginnings = [{ made, outlook: 0 }];
  }

  /** The best whole plan, once all are whole; null: not yet, or all came to an end that no task could follow. */
  get best(): Solution | null {
    const [best] = this.#beginnings;
    return this.isOver && best !== undefined && this.#isWhole(best) ? best.made : null;
  }

  get isOver(): boolean {
    return this.#done === 0 && this.#beginnings.every((beginning) => this.#isWhole(beginning));
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
    const { bench } = player;
    const isFirst = made.order.length === this.#made;
    const until = this.#ends.at(-1) ?? NEVER;
    player.adopt(made);
    const outs = this.#within(until);
    if (this.#done === 0) {
      this.#outlook.read(this.#from, (task) => player.isPlayed(task));
      this.#outlook.improve(isFirst ? SWEEPS : 1);
    }
    for (let way = isFirst ? FIRST_WAYS : WAYS; way > 0; way--) {
      const rule = this.#drawRule();
      rankBy(rule, bench, this.#recreate, outs);
      const cost = this.#recreate.play(outs, NEVER, Number.POSITIVE_INFINITY, rule.style, until);
      if (cost < Number.POSITIVE_INFINITY) this.#judge(until);
      player.reject();
      for (const task of outs) player.kept.restore(task);
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
    this.#outlook.read(until, (task) => player.isPlayed(task));
    const outlook = this.#outlook.cost();
    const worst = this.#next[this.#width - 1]?.outlook ?? Number.POSITIVE_INFINITY;
    if (outlook >= worst || this.#next.some((other) => other.outlook === outlook)) return;
    this.#keep({ made: player.played(), outlook });
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

/** Sessions' ends, and between them others where a session is long. */
function endsOfStretches({ calendar, horizon }: Bench): Minutes[] {
  const ends: Minutes[] = [];
  for (let session = 0; calendar.opening(session) < horizon; session++) {
    const opens = Math.max(0, calendar.opening(session));
    const minutes = Math.min(horizon, calendar.closing(session)) - opens;
    const parts = Math.max(1, Math.round(minutes / STRETCH));
    for (let part = 1; part <= parts; part++) ends.push(opens + Math.round((minutes * part) / parts));
  }
  return ends;
}

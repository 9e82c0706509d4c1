import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import { type Manner, mannerFor } from "./beam-manner.ts";
import type { BenchTask } from "./bench.ts";
import { stretchEnds } from "./bench-stretches.ts";
import { NEVER } from "./calendar.ts";
import { ComingFree } from "./coming-free.ts";
import type { Rule } from "./first-orders.ts";
import { nameOf } from "./name-work.ts";
import { isToDo } from "./order-of.ts";
import type { Player } from "./play-order.ts";
import type { PriceOutlook } from "./price-outlook.ts";
import type { Recreate } from "./recreate.ts";
import { type Solution, solutionOf } from "./solution.ts";
import { StretchAsPlayed } from "./stretch-as-played.ts";
import type { Style } from "./style.ts";
import { TaskByTask } from "./task-by-task.ts";
import { Ways } from "./ways.ts";

/** In how many ways the empty plan goes on. */
const FIRST_WAYS = 48;

/** A plan made up to some minute, and what it will cost. */
interface Beginning {
  readonly made: Solution;
  /** How many of its tasks were planned before the last stretch. */
  readonly before: number;
  readonly outlook: number;
  /** The name of the work done: only the best that has done the same is kept. */
  readonly work: number;
}

interface Options {
  /** How many plans are kept from stretch to stretch. */
  readonly width: number;
  /** What foretells what plans will cost. */
  readonly prices: PriceOutlook;
  /** Names of work, by task. */
  readonly names: Float64Array;
}

/**
 * Plans one stretch of bench time after the other: each of a few plans made so far goes on in several ways, by
 * dispatching rules drawn anew for every stretch, and those of the best outlook are kept (filtered beam search: P. Ow, T.
 * Morton, Filtered beam search in scheduling, Int. J. Production Research 26, 1988). Before the next stretch each of these does
 * its last one again a little otherwise, and is what that came to if it has no worse an outlook (recovering beam search: F. Della
 * Croce, V. T'kindt, A recovering beam search algorithm for the one-machine dynamic total completion time scheduling problem, J.
 * Operational Research Society 53, 2002; from memory).
 */
export class Beam {
  readonly #player: Player;
  readonly #recreate: Recreate;
  readonly #chance: Chance;
  readonly #ways: Ways;
  readonly #width: number;
  readonly #tasks: readonly BenchTask[];
  readonly #prices: PriceOutlook;
  readonly #manner: Manner;
  readonly #names: Float64Array;
  readonly #comingFree: ComingFree;
  /** Null: plans go on by rules only. */
  readonly #taskByTask: TaskByTask | null;
  /** All have gone on through the stretch task by task. */
  #isThrough = false;
  /** Minutes at which stretches end, the next one last. */
  readonly #ends: Minutes[];
  #from: Minutes = 0;
  #beginnings: Beginning[];
  /** How many of them have gone on. */
  #done = 0;
  /** What they have come to, best outlook first. */
  #next: Beginning[] = [];
  /** Those of it whose last stretch is still to be varied. */
  #unvaried: Beginning[] = [];
  readonly #stretch: StretchAsPlayed;
  /** The outlooks of what it has come to. */
  readonly #outlooks = new Set<number>();

  /** @param rules the rules of which others are drawn */
  constructor(
    player: Player,
    recreate: Recreate,
    chance: Chance,
    rules: readonly Rule[],
    { width, prices, names }: Options,
  ) {
    this.#player = player;
    this.#recreate = recreate;
    this.#chance = chance;
    this.#width = width;
    this.#tasks = player.bench.tasks.filter(isToDo);
    this.#prices = prices;
    this.#names = names;
    this.#manner = mannerFor(player.bench);
    this.#ways = new Ways(player, recreate, chance, { ...this.#manner, rules, prices });
    this.#comingFree = new ComingFree(player.bench);
    const { wider } = this.#manner;
    this.#taskByTask =
      wider === 0 ? null : new TaskByTask(player, prices.ways, this.#comingFree, names, wider * width);
    this.#stretch = new StretchAsPlayed(player.bench.tasks.length);
    this.#ends = stretchEnds(player.bench, this.#manner.stretch).reverse();
    this.#beginnings = [{ made: solutionOf([], 0), before: 0, outlook: 0, work: 0 }];
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

  /** Lets one plan go on by a stretch, or varies how one did it; the player's order that stands is lost. */
  round(): void {
    if (this.#taskByTask !== null && !this.#isThrough) {
      this.#goThrough(this.#taskByTask);
      return;
    }
    const unvaried = this.#unvaried.shift();
    if (unvaried !== undefined) this.#vary(unvaried);
    else this.#goOnWithNext();
    if (this.#done < this.#beginnings.length || this.#unvaried.length > 0) return;
    if (unvaried === undefined && this.#next.length > 0) {
      this.#unvaried = this.#next;
      this.#next = [];
      return;
    }
    this.#done = 0;
    this.#isThrough = false;
    this.#beginnings = this.#next;
    this.#next = [];
    this.#from = this.#ends.pop() ?? NEVER;
  }

  /** Goes on through the stretch by a task more, and keeps what that comes to. */
  #goThrough(taskByTask: TaskByTask): void {
    const until = this.#ends.at(-1) ?? NEVER;
    if (taskByTask.isOver) {
      const open = this.#beginnings.filter((beginning) => !this.#isWhole(beginning));
      taskByTask.begin(
        open.map(({ made }) => made),
        until,
      );
    }
    taskByTask.round(() => {
      // From the last stretch on only what there is no time for may be left: rules give that up.
      const isKept = until < NEVER || this.#player.place === this.#tasks.length;
      if (isKept) this.#keepIfBest(this.#foretell(until));
    });
    this.#isThrough = taskByTask.isOver;
  }

  /** Keeps what was just played if it is among the best. */
  #keepIfBest(outlook: number): void {
    const worst = this.#next[this.#width - 1]?.outlook ?? Number.POSITIVE_INFINITY;
    if (outlook < worst) this.#keep(this.#played(outlook));
  }

  #goOnWithNext(): void {
    const beginning = this.#beginnings[this.#done] as Beginning;
    if (this.#isWhole(beginning)) this.#keep({ ...beginning, before: beginning.made.order.length });
    else this.#goOn(beginning);
    this.#done++;
  }

  #goOn({ made }: Beginning): void {
    const player = this.#player;
    const isFirst = made.order.length === 0;
    const until = this.#ends.at(-1) ?? NEVER;
    player.adopt(made);
    this.#ways.begin();
    const outs = this.#comingFree.before(until);
    this.#outlooks.clear();
    const ways = isFirst ? FIRST_WAYS : this.#manner.ways;
    const mostStale = isFirst ? ways : this.#manner.stale;
    for (let way = 0, stale = 0; way < ways && stale < mostStale; way++) {
      const before = this.#outlooks.size;
      this.#tryWay(outs, until);
      stale = this.#outlooks.size > before ? 0 : stale + 1;
    }
  }

  /** Lets the plan that goes on do so in one way. */
  #tryWay(outs: readonly BenchTask[], until: Minutes): void {
    const style = this.#ways.draw(outs, this.#opens, until);
    const outlook = this.#play(outs, style, until);
    this.#outlooks.add(outlook);
    this.#keepIfBest(outlook);
    this.#takeBack(outs);
  }

  /** Puts in what may be done in the stretch, after the plan that goes on. @returns the outlook then */
  #play(outs: readonly BenchTask[], style: Style, until: Minutes): number {
    const cost = this.#recreate.play(outs, NEVER, Number.POSITIVE_INFINITY, style, until);
    return cost < Number.POSITIVE_INFINITY ? this.#foretell(until) : cost;
  }

  #takeBack(outs: readonly BenchTask[]): void {
    this.#player.reject();
    for (const task of outs) this.#player.kept.restore(task);
  }

  /** The first minute of the stretch at which the bench is open. */
  get #opens(): Minutes {
    const { calendar } = this.#player.bench;
    return Math.max(this.#from, calendar.opening(calendar.at(this.#from)));
  }

  /** Does the last stretch of a plan again and again a little otherwise, and goes on from each that has no worse outlook. */
  #vary(beginning: Beginning): void {
    let best = beginning;
    const player = this.#player;
    const { made, before } = beginning;
    if (made.order.length > before) {
      const isPlayed = (task: BenchTask): boolean => player.isPlayed(task);
      const until = this.#ends.at(-1) ?? NEVER;
      player.adopt(made);
      this.#stretch.note(this.#tasks, isPlayed);
      player.adopt(solutionOf(made.order.slice(0, before), 0));
      const outs = this.#comingFree.before(until);
      for (let way = 0; way < this.#manner.varied; way++) {
        const style = this.#stretch.vary(outs, this.#opens, until, this.#recreate, this.#chance);
        const outlook = this.#play(outs, style, until);
        if (outlook <= best.outlook) {
          this.#stretch.note(outs, isPlayed);
          best = this.#played(outlook);
        }
        this.#takeBack(outs);
      }
    }
    // What two came to counts once: so that not all become the same, the second stays what it was.
    if (!this.#keep(best)) this.#keep(beginning);
  }

  /** What the plan will cost that was just played up to a minute. */
  #foretell(until: Minutes): number {
    return this.#prices.cost(until, (task) => this.#player.isPlayed(task));
  }

  /** What was just played, after the plan that goes on. */
  #played(outlook: number): Beginning {
    const made = this.#player.played();
    return { made, before: this.#player.order.length, outlook, work: nameOf(made.order, this.#names) };
  }

  /** Keeps a plan if it is among the best and better than one that has done the same work. @returns whether it was kept */
  #keep(beginning: Beginning): boolean {
    const { outlook, work } = beginning;
    const next = this.#next;
    const same = next.findIndex((other) => other.work === work);
    if (same >= 0) {
      if ((next[same] as Beginning).outlook <= outlook) return false;
      next.splice(same, 1);
    }
    const place = next.findIndex((other) => other.outlook > outlook);
    next.splice(place < 0 ? next.length : place, 0, beginning);
    next.length = Math.min(next.length, this.#width);
    return next.includes(beginning);
  }
}

import type { Minutes } from "../../time/instant.ts";
import { findBegin } from "./begin-task.ts";
import type { BenchTask, BenchWait } from "./bench.ts";
import type { ComingFree } from "./coming-free.ts";
import { nameOf } from "./name-work.ts";
import { NextOutlook } from "./next-outlook.ts";
import { isToDo } from "./order-of.ts";
import type { Player } from "./play-order.ts";
import type { PricedWays } from "./priced-ways.ts";
import type { Solution } from "./solution.ts";
import { latestBegin, letsMeet } from "./what-may-follow.ts";

/** What a minute later counts for, of plans that cost the same on the grid of starts. */
const LATER = 1e-3;

/** A plan to go on from, and the tasks put in after it. */
interface Beginning {
  readonly root: Solution;
  readonly added: readonly BenchTask[];
  readonly outlook: number;
  /** The name of the work done. */
  readonly work: number;
}

/**
 * Goes on from plans made so far by one task after the other up to a minute: of all plans that have done the same work
 * the best is kept, and of these some of the best (a dynamic program over the work done that keeps no more than some states of
 * each stage: J. Bautista, J. Pereira, A dynamic programming based heuristic for the assembly line balancing problem,
 * European J. Operational Research 194, 2009; from memory).
 */
export class TaskByTask {
  readonly #player: Player;
  readonly #comingFree: ComingFree;
  readonly #outlook: NextOutlook;
  readonly #width: number;
  /** By task. */
  readonly #names: Float64Array;
  /** All with a window that shuts for good. */
  readonly #shutting: readonly BenchTask[];
  #until: Minutes = 0;
  #beginnings: readonly Beginning[] = [];
  /** The best that the beginnings have come to, by work. */
  readonly #next = new Map<number, Beginning>();
  /** The root that stands, and what may come free after it. */
  #standing: Solution | null = null;
  #outs: readonly BenchTask[] = [];
  /** The order played: the root that stands, and what was put in after it. */
  readonly #trial: BenchTask[] = [];
  /** What was played or laid out after the root that stands. */
  readonly #touched: BenchTask[] = [];

  /**
   * @param names of work, by task
   * @param width how many plans are kept after each task
   */
  constructor(player: Player, ways: PricedWays, comingFree: ComingFree, names: Float64Array, width: number) {
    this.#player = player;
    this.#comingFree = comingFree;
    this.#outlook = new NextOutlook(player, ways);
    this.#width = width;
    this.#shutting = player.bench.tasks.filter((task) => isToDo(task) && shutsForGood(task));
    this.#names = names;
  }

  /** Nothing more can be begun before that minute. */
  get isOver(): boolean {
    return this.#beginnings.length === 0;
  }

  /** Lets these plans go on next, with all that can be begun before a minute. */
  begin(roots: readonly Solution[], until: Minutes): void {
    this.#until = until;
    this.#beginnings = roots.map((root) => {
      return { root, added: [], outlook: 0, work: nameOf(root.order, this.#names) };
    });
  }

  /**
   * Lets all go on by a task.
   *
   * @param seen told of each plan that nothing more can go into, as it is played
   */
  round(seen: () => void): void {
    this.#next.clear();
    this.#standing = null;
    for (const beginning of this.#beginnings) this.#goOn(beginning, seen);
    const sorted = [...this.#next.values()].sort((a, b) => a.outlook - b.outlook);
    this.#beginnings = byRoot(sorted.slice(0, this.#width));
  }

  #goOn(beginning: Beginning, seen: () => void): void {
    const player = this.#player;
    const { bench } = player;
    this.#play(beginning.root, beginning.added);
    this.#outlook.read();
    const due = this.#findDue();
    const outs = this.#outs;
    let went = false;
    let missed: BenchTask | null = null;
    for (let index = 0; index < outs.length; index++) {
      const task = outs[index] as BenchTask;
      if (player.isPlayed(task) || !this.#isFree(task)) continue;
      this.#touched.push(task);
      if (!findBegin(bench, task, bench.clock)) {
        if (bench.missed !== null) missed ??= task;
      } else if (task.begin < this.#until && this.#leavesTime(task, due)) {
        this.#offer(beginning, task);
        went = true;
      }
    }
    if (!went) seen();
    this.#takeBack();
    if (!went && missed !== null) this.#lift(beginning, missed);
  }

  /** Plays tasks after a root, which stands then. @returns what that costs; Infinity: it cannot be */
  #play(root: Solution, added: readonly BenchTask[]): number {
    const player = this.#player;
    const trial = this.#trial;
    if (this.#standing !== root) {
      player.adopt(root);
      this.#standing = root;
      this.#outs = this.#comingFree.before(this.#until);
      this.#outlook.noteRoot();
      trial.length = 0;
      for (const task of root.order) trial.push(task);
    }
    trial.length = root.order.length;
    for (let index = 0; index < added.length; index++) {
      const task = added[index] as BenchTask;
      trial.push(task);
      this.#touched.push(task);
    }
    return player.try(trial, root.order.length, trial.length, Number.POSITIVE_INFINITY);
  }

  #takeBack(): void {
    const { kept } = this.#player;
    this.#player.reject();
    for (let index = 0; index < this.#touched.length; index++)
      kept.restore(this.#touched[index] as BenchTask);
    this.#touched.length = 0;
  }

  /** What has to be begun by some minute, of all that may go next. */
  #findDue(): BenchTask[] {
    const due: BenchTask[] = [];
    for (let index = 0; index < this.#shutting.length; index++) {
      const task = this.#shutting[index] as BenchTask;
      if (!this.#player.isPlayed(task) && this.#isFree(task)) due.push(task);
    }
    return due;
  }

  #isFree({ waits }: BenchTask): boolean {
    for (let index = 0; index < waits.length; index++) {
      const { on } = waits[index] as BenchWait;
      if (isToDo(on) && !this.#player.isPlayed(on)) return false;
    }
    return true;
  }

  /** Whether a task lets those that have to be begun for their windows meet them, or is the first of these itself. */
  #leavesTime(task: BenchTask, due: readonly BenchTask[]): boolean {
    let isFirst = true;
    let letsAll = true;
    const own = latestBegin(task);
    for (let index = 0; index < due.length; index++) {
      const other = due[index] as BenchTask;
      if (other === task) continue;
      const latest = latestBegin(other);
      if (latest <= own) isFirst = false;
      if (task.end > latest || !letsMeet(this.#player.bench, task, other, latest)) letsAll = false;
    }
    return letsAll || isFirst;
  }

  /** Keeps a plan with a task laid out after it, if it is the best that has done the same work. */
  #offer({ root, added, work: before }: Beginning, task: BenchTask): void {
    const outlook = this.#outlook.costWith(task) + LATER * task.end;
    const work = before + (this.#names[task.index] as number);
    if (this.#isBest(work, outlook)) this.#next.set(work, { root, added: [...added, task], outlook, work });
  }

  #isBest(work: number, outlook: number): boolean {
    const known = this.#next.get(work);
    return known === undefined || outlook < known.outlook;
  }

  /** Nothing but a task may go next whose window has shut by then: what it waits for ends later. */
  #lift({ root, added, work: before }: Beginning, task: BenchTask): void {
    const cost = this.#play(root, [...added, task]);
    if (cost < Number.POSITIVE_INFINITY && task.begin < this.#until) {
      this.#outlook.read();
      const outlook = this.#outlook.cost() + LATER * task.end;
      const work = before + (this.#names[task.index] as number);
      if (this.#isBest(work, outlook)) {
        this.#next.set(work, { root: this.#player.played(), added: [], outlook, work });
      }
    }
    this.#takeBack();
  }
}

function shutsForGood({ waits }: BenchTask): boolean {
  return waits.some(({ windows }) => (windows.at(-1)?.shuts ?? null) !== null);
}

/** Those that go on from the same root one after the other: then it is played once. */
function byRoot(beginnings: readonly Beginning[]): Beginning[] {
  const groups = new Map<Solution, Beginning[]>();
  for (const beginning of beginnings) {
    const group = groups.get(beginning.root);
    if (group === undefined) groups.set(beginning.root, [beginning]);
    else group.push(beginning);
  }
  return [...groups.values()].flat();
}

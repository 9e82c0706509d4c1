import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import { listOf } from "../list-of.ts";
import type { Bench, BenchHook, BenchPiece, BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { type Chain, type ChainStep, noteLeast } from "./chain.ts";
import { isToDo } from "./order-of.ts";
import { pieceCost } from "./place-task.ts";
import { PricedTime } from "./priced-time.ts";
import { StartGrid } from "./start-grid.ts";

/** Share of the open hours in which hands do steps. By trial. */
const AT_WORK = 0.75;

/** Share of the tasks with a set-up that have to make it. By trial. */
const SET_UPS_MADE = 0.5;

/** For how long hooks and room have the same price. */
const HANGING_EVERY: Minutes = 60;

/**
 * The ways that pieces can take through the bench hours, each as if alone, when hands, hooks and room under the limit have
 * their price: by a dynamic program over the starts of each step, from the last one back. Waits, windows that shut for good,
 * nights unfit for a coat and closed hours count; air that is not clear does not.
 */
export class PricedWays {
  readonly #bench: Bench;
  readonly grid: StartGrid;
  readonly #hands: PricedTime;
  /** Null: any number may be out. */
  readonly room: PricedTime | null;
  /** By place. */
  readonly #hooks: readonly PricedTime[];
  /** By minutes of work, and start: what they cost at the prices as they are. */
  readonly #worked = new Map<Minutes, Float64Array>();
  /** Starts that may be the best yet within windows that shut, as they slide on. */
  readonly #queue: Int32Array;
  /** Of the windows read last: when the first open and the last shut, NEVER or later: not at all. */
  opens: Minutes = 0;
  shuts: Minutes = NEVER;
  /** Of every piece that has something to do, and time for it. */
  readonly chains: readonly Chain[];
  /** All that has a price. */
  readonly scarce: readonly PricedTime[];

  /**
   * @param until nothing begins from that minute on
   * @param every minutes between two starts: that a task begins somewhat later than it could stands for what is left out
   */
  constructor(bench: Bench, until: Minutes, every: Minutes) {
    const { calendar, places, mostOut, hands, pieces } = bench;
    this.#bench = bench;
    this.grid = new StartGrid(calendar, until, every);
    const cure = pieces.reduce((most, piece) => Math.max(most, piece.cure), 0);
    const hanging = (most: number): PricedTime => new PricedTime(until + cure, HANGING_EVERY, most);
    this.#hands = new PricedTime(this.grid.open, every, AT_WORK * hands.length);
    this.room = mostOut === null ? null : hanging(mostOut);
    this.#hooks = listOf(places, ({ hooks }) => hanging(hooks));
    this.scarce = [this.#hands, ...this.#hooks, ...(this.room === null ? [] : [this.room])];
    this.#queue = new Int32Array(this.grid.minutes.length);
    const chains = listOf(pieces, (piece) => this.#chainOf(piece));
    this.chains = chains.filter(
      (chain) => chain.steps.length > 0 && this.solve(chain) < Number.POSITIVE_INFINITY,
    );
  }

  #chainOf(piece: BenchPiece): Chain {
    const grid = this.grid;
    const { length } = grid.minutes;
    const tasks = piece.tasks.filter(isToDo);
    let earliest: Minutes = 0;
    const steps = listOf(tasks, (task, place): ChainStep => {
      const { hook } = task;
      const ends = grid.endsOf(task);
      const from = grid.from(earliest);
      const following = tasks[place + 1];
      const wait = following?.waits.find(({ on }) => on === task) ?? null;
      earliest = this.#earliestAfter(task, wait, earliest);
      return {
        task,
        from,
        hands: 1 + (SET_UPS_MADE * (task.setUp?.minutes ?? 0)) / task.minutes,
        ends,
        hung: hook === null ? null : ends.map((end) => (end < NEVER ? hungUntil(hook, end) : NEVER)),
        followers: grid.followers(ends, wait),
        costs: new Float64Array(length),
        next: new Int32Array(length).fill(-1),
        least: new Int32Array(length + 1).fill(-1),
      };
    });
    const isNotBegun = steps.length === piece.tasks.length;
    return { piece, steps, takesRoom: this.room !== null && piece.underLimit && isNotBegun };
  }

  /**
   * When the next task can begin at the earliest, minute by minute: plans made so far need not keep to the starts looked at,
   * and would seem too late for their windows if they were ahead of all ways that do.
   */
  #earliestAfter({ release, mayStop, minutes }: BenchTask, wait: BenchWait | null, from: Minutes): Minutes {
    const begin = this.#bench.calendar.meeting(Math.max(from, release), 0, mayStop ? 1 : minutes);
    return openingAfter(wait?.windows[0]?.opens ?? 0, begin + minutes);
  }

  /** The prices are others now. */
  reprice(): void {
    this.#worked.clear();
  }

  /** Finds the ways of a piece at the prices as they are. @returns what the best costs; Infinity: there is none */
  solve(chain: Chain): number {
    const { steps } = chain;
    for (let place = steps.length - 1; place >= 0; place--) {
      const step = steps[place] as ChainStep;
      if (place + 1 < steps.length) this.#goOn(step, steps[place + 1] as ChainStep);
      this.#price(chain, place);
    }
    const start = this.#firstStart(chain);
    return start < 0 ? Number.POSITIVE_INFINITY : ((steps[0] as ChainStep).costs[start] as number);
  }

  /** Finds the best start of the step after one, for each start of it. */
  #goOn({ from: earliest, ends, followers, next }: ChainStep, { costs, least }: ChainStep): void {
    const { first, last } = followers;
    const { length } = next;
    const queue = this.#queue;
    let head = 0;
    let tail = 0;
    let seen = 0;
    for (let start = earliest; start < length; start++) {
      if ((ends[start] as Minutes) >= NEVER) {
        next[start] = -1;
        continue;
      }
      const from = first[start] as number;
      const to = last[start] as number;
      const best = least[from] as number;
      if (best <= to) {
        next[start] = best;
        continue;
      }
      // The best of all lies beyond the window: of those within it, one that no later one undercuts.
      for (seen = Math.max(seen, from); seen <= to; seen++) {
        const cost = costs[seen] as number;
        while (tail > head && (costs[queue[tail - 1] as number] as number) >= cost) tail--;
        queue[tail++] = seen;
      }
      while (head < tail && (queue[head] as number) < from) head++;
      const within = head < tail ? (queue[head] as number) : -1;
      next[start] = within >= 0 && (costs[within] as number) < Number.POSITIVE_INFINITY ? within : -1;
    }
  }

  /** Writes into a step what each of its starts costs, with all that follows. */
  #price({ piece, steps, takesRoom }: Chain, place: number): void {
    const { task, from, hands, ends, hung, costs, next } = steps[place] as ChainStep;
    const { minutes } = this.grid;
    const worked = this.#workCosts(task.minutes);
    const following = steps[place + 1]?.costs ?? null;
    const begins = takesRoom && place === 0 ? this.room : null;
    for (let start = from; start < costs.length; start++) {
      const end = ends[start] as Minutes;
      let cost = Number.POSITIVE_INFINITY;
      if (end < NEVER && following === null) cost = this.#finishCost(piece, end);
      else if ((next[start] as number) >= 0)
        cost = (following as Float64Array)[next[start] as number] as number;
      cost += hands * (worked[start] as number);
      costs[start] = begins === null ? cost : cost - begins.upTo(minutes[start] as Minutes);
    }
    if (hung !== null) this.#hooksOf(task)?.addSpans(ends, hung, from, costs);
    noteLeast(steps[place] as ChainStep);
  }

  /** By start: what so many minutes of hands cost from then on. */
  #workCosts(minutes: Minutes): Float64Array {
    const known = this.#worked.get(minutes);
    if (known !== undefined) return known;
    const { openBefore } = this.grid;
    const costs = new Float64Array(openBefore.length);
    for (let start = 0; start < openBefore.length; start++) {
      const open = openBefore[start] as Minutes;
      costs[start] = this.#hands.upTo(open + minutes) - this.#hands.upTo(open);
    }
    this.#worked.set(minutes, costs);
    return costs;
  }

  #hooksOf({ hook }: BenchTask): PricedTime | null {
    return hook === null ? null : (this.#hooks[this.#bench.places.indexOf(hook.place)] as PricedTime);
  }

  #finishCost(piece: BenchPiece, end: Minutes): number {
    const finish = Math.min(this.#bench.horizon, end + piece.cure);
    const room = this.room === null || !piece.underLimit ? 0 : this.room.upTo(finish);
    return pieceCost(this.#bench, piece, finish) + room;
  }

  #firstStart({ steps }: Chain): number {
    return this.bestStart(steps[0] as ChainStep, 0, isDone);
  }

  /** The best start of a step from a minute on, in its windows; -1: there is none. */
  bestStart(step: ChainStep, from: Minutes, isPlayed: (task: BenchTask) => boolean): number {
    this.readWindows(step.task, isPlayed);
    return this.bestWithin(step, this.grid.from(Math.max(from, this.opens)), this.shuts);
  }

  /** Reads when a task's first windows open and its last ones shut, of what was done before it. */
  readWindows({ waits, release }: BenchTask, isPlayed: (task: BenchTask) => boolean): void {
    let opens = release;
    let shuts = NEVER;
    for (let index = 0; index < waits.length; index++) {
      const { on, windows } = waits[index] as BenchWait;
      if (!isDone(on) && !isPlayed(on)) continue;
      opens = Math.max(opens, openingAfter(windows[0]?.opens ?? 0, on.end));
      shuts = Math.min(shuts, shutAfter(windows[windows.length - 1]?.shuts ?? null, on.end));
    }
    this.opens = opens;
    this.shuts = shuts;
  }

  /** The best start of a step from one on, until its windows shut; -1: there is none. */
  bestWithin({ from: earliest, least, costs }: ChainStep, from: number, shuts: Minutes): number {
    const first = Math.max(earliest, from);
    const best = least[first] as number;
    if (shuts >= NEVER) return best;
    const last = this.grid.lastIn(first, shuts);
    if (best <= last) return best;
    let within = first;
    for (let start = first + 1; start <= last; start++) {
      if ((costs[start] as number) < (costs[within] as number)) within = start;
    }
    return first <= last && (costs[within] as number) < Number.POSITIVE_INFINITY ? within : -1;
  }

  /** Takes what the best way of a piece does of all that is scarce. */
  take({ piece, steps, takesRoom }: Chain): void {
    const { minutes, openBefore } = this.grid;
    let start = this.bestStart(steps[0] as ChainStep, 0, isDone);
    const begin = takesRoom ? (minutes[start] as Minutes) : 0;
    let end = 0;
    for (let place = 0; place < steps.length; place++) {
      const { task, hands, ends, hung, next } = steps[place] as ChainStep;
      const open = openBefore[start] as Minutes;
      this.#hands.take(open, open + task.minutes, hands);
      end = ends[start] as Minutes;
      if (hung !== null) this.#hooksOf(task)?.take(end, hung[start] as Minutes, 1);
      start = next[start] as number;
    }
    if (piece.underLimit) this.room?.take(begin, Math.min(this.#bench.horizon, end + piece.cure), 1);
  }
}

function hungUntil(hook: BenchHook, end: Minutes): Minutes {
  return Math.min(NEVER, openingAfter(hook.until, end));
}

/** Before every play. */
function isDone(task: BenchTask): boolean {
  return !isToDo(task);
}

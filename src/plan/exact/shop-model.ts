import { type Problem, SHORTEST_PART, type Task } from "../problem.ts";
import { Arcs, type Difference, type Literal } from "./arcs.ts";
import { longestLag, shortestLag } from "./lag-bounds.ts";
import { findLongestPaths, type LongestPaths } from "./longest-paths.ts";
import { Machine } from "./machine.ts";
import type { Model, Way } from "./model.ts";
import { type Outing, OutRule } from "./out-rule.ts";
import { Profile } from "./profile.ts";
import type { StartLag } from "./project.ts";
import { lookBackward, lookForward } from "./resource.ts";
import { SetUpRule } from "./set-up-rule.ts";
import { Sum, type Term } from "./sum.ts";

/** A shop as the search by conflict reads it. */
export interface ShopModel extends Model {
  /** By task: the variable of its start; null: it is done. */
  readonly starts: readonly (number | null)[];
}

/**
 * The bench's problem as a model in which every plan that places all tasks is a solution and costs no less there:
 * sessions, one pair of hands, set-ups, what must keep apart, hooks that stay taken and hard windows are as in the
 * problem; looks, mending, preparation, putting away and the limit on how many are out are left out.
 *
 * @param most only plans that cost at most this are of interest
 * @returns null where the problem has more than one pair of hands, work that may be split, or a start nobody knows
 */
export function makeShopModel(problem: Problem, most: number): ShopModel | null {
  const { tasks } = problem;
  if (problem.hands !== 1 || !tasks.every(isWhole)) return null;
  return new ShopModelMaker(problem, most).make();
}

/** Whether a task is worked in one go at a time that is known. */
function isWhole({ mayStop, minutes, release, ended }: Task): boolean {
  return ended !== null || ((!mayStop || minutes < 2 * SHORTEST_PART) && release !== null);
}

class ShopModelMaker {
  readonly #problem: Problem;
  readonly #open: readonly number[];
  readonly #first: number[] = [];
  readonly #differences: Difference[] = [];
  readonly #clauses: Literal[][] = [];
  readonly #ways: Way[] = [];
  /** By task: when its hands-on begins, set-up included, and when the task itself starts. */
  readonly #begins: number[] = [];
  readonly #starts: number[] = [];
  readonly #made = new Map<number, number>();
  /** By piece: when it is finished. */
  readonly #finishes = new Map<number, number>();
  readonly #goal: number;

  constructor(problem: Problem, most: number) {
    this.#problem = problem;
    this.#open = problem.tasks.flatMap(({ ended }, task) => (ended === null ? [task] : []));
    for (const task of this.#open) this.#begins[task] = this.#addBegin(task);
    for (const task of this.#open) this.#starts[task] = this.#addStart(task);
    this.#goal = this.#add(0, most);
  }

  make(): ShopModel | null {
    const { problem, open } = { problem: this.#problem, open: this.#open };
    this.#addWaits();
    const paths = this.#pathsOfWaits();
    if (paths === null) return null;
    this.#addOrders(paths);
    for (const task of open) this.#addSessions(task);
    const goal = this.#addGoal();
    const outRules = this.#outRules(paths);
    const users = open.map((task) => ({
      body: this.#starts[task] as number,
      offset: 0,
      duration: this.#task(task).minutes,
      demand: 1,
    }));
    return {
      first: this.#first,
      times: open.length,
      ways: this.#ways,
      goal: this.#goal,
      arcs: new Arcs(this.#differences, this.#first.length),
      clauses: this.#clauses,
      rules: [
        goal,
        ...this.#setUpRules(paths),
        new Machine(lookForward(users, 1)),
        new Machine(lookBackward(users, 1)),
        ...this.#hookRules(),
        ...outRules,
      ],
      starts: problem.tasks.map((_, task) => this.#starts[task] ?? null),
    };
  }

  #task(task: number): Task {
    return this.#problem.tasks[task] as Task;
  }

  /** Adds a variable. */
  #add(least: number, most: number): number {
    return this.#first.push(least, -most) / 2 - 1;
  }

  #addBegin(task: number): number {
    const { running, release, piece, minutes } = this.#task(task);
    if (running) return this.#add(0, 0);
    const { sessions, pieces, horizon } = this.#problem;
    const earliest = Math.max(0, release ?? 0, pieces[piece]?.release ?? 0, sessions[0]?.opens ?? 0);
    return this.#add(earliest, Math.min(horizon, sessions.at(-1)?.closes ?? 0) - minutes);
  }

  /** A task that may be set up for starts so much after its hands-on begins, or at once. */
  #addStart(task: number): number {
    const begin = this.#begins[task] as number;
    const { setUp, running } = this.#task(task);
    const minutes = this.#problem.setUps[setUp ?? -1]?.minutes ?? 0;
    if (minutes === 0 || running) return begin;
    const start = this.#add(this.#first[2 * begin] as number, -(this.#first[2 * begin + 1] as number));
    const made = this.#add(0, 1);
    this.#made.set(task, made);
    this.#keep(begin, start, 0);
    this.#keep(start, begin, -minutes);
    this.#keep(begin, start, minutes, { side: 2 * made, value: 1 });
    this.#keep(start, begin, 0, { side: 2 * made + 1, value: 0 });
    return start;
  }

  #keep(from: number, to: number, least: number, condition: Literal | null = null): void {
    this.#differences.push({ from, to, least, condition });
  }

  /** Raises the lower bound a variable has at the beginning. */
  #raise(variable: number, least: number): void {
    this.#first[2 * variable] = Math.max(this.#first[2 * variable] as number, least);
  }

  #addWaits(): void {
    for (const task of this.#open) {
      const start = this.#starts[task] as number;
      for (const { on, least, most } of waitsOf(this.#task(task))) {
        const { ended, minutes } = this.#task(on);
        if (this.#task(task).running) continue;
        if (ended !== null) {
          this.#raise(start, ended + least);
          const latest = 2 * start + 1;
          if (most !== null) this.#first[latest] = Math.max(this.#first[latest] as number, -(ended + most));
        } else {
          this.#keep(this.#starts[on] as number, start, minutes + least);
          if (most !== null) this.#keep(start, this.#starts[on] as number, -(minutes + most));
        }
      }
    }
  }

  /** The longest paths between tasks, from start to start, by their waits alone. */
  #pathsOfWaits(): LongestPaths | null {
    const lags = this.#open.flatMap((task): StartLag[] =>
      waitsOf(this.#task(task)).flatMap(({ on, least, most }) => {
        const { ended, minutes } = this.#task(on);
        if (ended !== null || this.#task(task).running) return [];
        const back = most === null ? [] : [{ from: task, to: on, least: -(minutes + most) }];
        return [{ from: on, to: task, least: minutes + least }, ...back];
      }),
    );
    return findLongestPaths(this.#problem.tasks.length, lags);
  }

  /** Of every two tasks one comes first; with one pair of hands the other begins when it has ended. */
  #addOrders(paths: LongestPaths): void {
    for (const [place, one] of this.#open.entries()) {
      for (const other of this.#open.slice(place + 1)) {
        const order = this.#orderOf(paths, one, other);
        if (order !== "after")
          this.#follow(one, other, order === "before" ? null : { side: 2 * order, value: 1 });
        if (order !== "before")
          this.#follow(other, one, order === "after" ? null : { side: 2 * order + 1, value: 0 });
      }
    }
  }

  readonly #orders = new Map<string, "before" | "after" | number>();

  /** Which of two tasks comes first, or the variable that says so: 1 when the one does. */
  #orderOf(paths: LongestPaths, one: number, other: number): "before" | "after" | number {
    const key = `${one} ${other}`;
    const known = this.#orders.get(key);
    if (known !== undefined) return known;
    const order = this.#fixedOrder(paths, one, other) ?? this.#addWay(one, other);
    this.#orders.set(key, order);
    return order;
  }

  #fixedOrder({ length, size }: LongestPaths, one: number, other: number): "before" | "after" | null {
    if (this.#task(one).running) return "before";
    if (this.#task(other).running) return "after";
    if ((length[one * size + other] as number) >= 0) return "before";
    return (length[other * size + one] as number) >= 0 ? "after" : null;
  }

  #addWay(one: number, other: number): number {
    const variable = this.#add(0, 1);
    this.#ways.push({
      variable,
      one: this.#begins[one] as number,
      other: this.#begins[other] as number,
    });
    return variable;
  }

  /** One task comes before another: what then lies between them. */
  #follow(one: number, other: number, condition: Literal | null): void {
    const ends = this.#task(one).minutes;
    const start = this.#starts[one] as number;
    const { fromBegin, fromStart } = this.#clearing(one, other);
    this.#keep(start, this.#begins[other] as number, ends + fromBegin, condition);
    const needs = Math.max(fromStart, this.#resetting(one, other));
    if (needs > fromBegin) this.#keep(start, this.#starts[other] as number, ends + needs, condition);
  }

  /** Minutes to set up for another task where the one leaves something else standing. */
  #resetting(one: number, other: number): number {
    const { setUp: left, station } = this.#task(one);
    const { setUp: needed, station: its } = this.#task(other);
    if (left === null || needed === null || left === needed || station !== its) return 0;
    return this.#problem.setUps[needed]?.minutes ?? 0;
  }

  /** Minutes for the air to clear between what two tasks give off: before the other begins, and before it starts. */
  #clearing(one: number, other: number): { fromBegin: number; fromStart: number } {
    let fromBegin = 0;
    let fromStart = 0;
    for (const { what, lasts } of this.#task(one).gives) {
      for (const its of this.#task(other).gives) {
        const isApart = this.#problem.apart.some(
          ([a, b]) => (a === what && b === its.what) || (b === what && a === its.what),
        );
        if (isApart && its.fromSetUp) fromBegin = Math.max(fromBegin, lasts);
        if (isApart) fromStart = Math.max(fromStart, lasts);
      }
    }
    return { fromBegin, fromStart };
  }

  /** A task and its set-up lie in one session: it ends by a closing, or begins after the next opening. */
  #addSessions(task: number): void {
    const { minutes, running } = this.#task(task);
    const begin = this.#begins[task] as number;
    const start = this.#starts[task] as number;
    for (const [place, { closes }] of this.#problem.sessions.entries()) {
      const next = this.#problem.sessions[place + 1];
      if (next === undefined || running) continue;
      const [earliest, latest] = [this.#first[2 * begin] as number, -(this.#first[2 * begin + 1] as number)];
      if (closes - minutes < earliest) this.#raise(begin, Math.min(next.opens, latest + 1));
      else if (next.opens > latest) continue;
      else {
        this.#clauses.push([
          { side: 2 * begin, value: next.opens },
          { side: 2 * start + 1, value: minutes - closes },
        ]);
      }
    }
    this.#raise(start, this.#first[2 * begin] as number);
  }

  /** What the plan costs: lateness, flow and setting up. */
  #addGoal(): Sum {
    const { pieces, prices, horizon } = this.#problem;
    let base = 0;
    const terms: Term[] = [];
    for (const [index, { release, due, weight, cure }] of pieces.entries()) {
      const own = this.#open.filter((task) => this.#task(task).piece === index);
      if (own.length === 0) {
        base += prices.flow * Math.max(0, horizon - release);
        if (due !== null) base += prices.late * weight * Math.max(0, horizon - due);
        continue;
      }
      const finish = this.#add(Math.max(0, release), horizon + cure);
      for (const task of own)
        this.#keep(this.#starts[task] as number, finish, this.#task(task).minutes + cure);
      base -= prices.flow * release;
      terms.push({ variable: finish, times: prices.flow });
      this.#finishes.set(index, finish);
      if (due === null) continue;
      const late = this.#add(0, Math.max(0, horizon + cure - due));
      this.#keep(finish, late, -due);
      terms.push({ variable: late, times: prices.late * weight });
    }
    for (const [task, made] of this.#made) {
      const minutes = this.#problem.setUps[this.#task(task).setUp ?? -1]?.minutes ?? 0;
      terms.push({ variable: made, times: prices.setUp * minutes });
    }
    return new Sum(
      this.#goal,
      base,
      terms.filter(({ times }) => times > 0),
    );
  }

  #setUpRules(paths: LongestPaths): SetUpRule[] {
    const { stations, setUps } = this.#problem;
    const keeps = new Map(setUps.map(({ keeps }, setUp) => [setUp, keeps]));
    return stations.flatMap(({ standing }, station) => {
      const own = this.#open.filter((task) => this.#made.has(task) && this.#task(task).station === station);
      if (own.length === 0) return [];
      const tasks = own.map((task) => ({
        setUp: this.#task(task).setUp ?? -1,
        start: this.#starts[task] as number,
        duration: this.#task(task).minutes,
        made: this.#made.get(task) ?? -1,
      }));
      const stands = standing === null || standing === "any" ? standing : standing.setUp;
      const before = (one: number, other: number): Literal | null | undefined => {
        const [a, b] = [own[one] as number, own[other] as number];
        const order = a < b ? this.#orderOf(paths, a, b) : this.#orderOf(paths, b, a);
        if (typeof order === "number")
          return a < b ? { side: 2 * order, value: 1 } : { side: 2 * order + 1, value: 0 };
        return (order === "before") === a < b ? null : undefined;
      };
      return [new SetUpRule(tasks, keeps, stands, before)];
    });
  }

  /** Pieces that are out are as many as may be; one whose first task is open counts for nothing. */
  #outRules({ length, size }: LongestPaths): OutRule[] {
    const { mostOut, pieces } = this.#problem;
    if (mostOut === null) return [];
    const outings = [...this.#finishes].flatMap(([piece, until]): Outing[] => {
      if (pieces[piece]?.begun === true) return [{ from: this.#add(0, 0), until }];
      const own = this.#open.filter((task) => this.#task(task).piece === piece);
      const first = own.find((task) => own.every((other) => (length[task * size + other] as number) >= 0));
      return first === undefined ? [] : [{ from: this.#begins[first] as number, until }];
    });
    return outings.length <= mostOut ? [] : [new OutRule(outings, mostOut)];
  }

  /** Places with hooks that stay taken for a time that is known. */
  #hookRules(): Profile[] {
    return this.#problem.places.flatMap(({ hooks }, place) => {
      const users = this.#open.flatMap((task) => {
        const { hook, minutes } = this.#task(task);
        if (hook === null || hook.place !== place || hook.stays !== true || typeof hook.until !== "number")
          return [];
        return [{ body: this.#starts[task] as number, offset: minutes, duration: hook.until, demand: 1 }];
      });
      if (users.length <= hooks) return [];
      return [new Profile(lookForward(users, hooks)), new Profile(lookBackward(users, hooks))];
    });
  }
}

/** The least and the greatest time from the end of one task to the start of another that any window leaves. */
function waitsOf({ waits }: Task): { on: number; least: number; most: number | null }[] {
  return waits.map(({ on, windows, mend }) => {
    const opens = windows[0]?.opens ?? 0;
    const shuts = windows.at(-1)?.shuts ?? null;
    return {
      on,
      least: shortestLag(opens),
      most: mend === null && shuts !== null ? longestLag(shuts) : null,
    };
  });
}

import { firstFit, lastFit } from "../fit-minutes.ts";
import type { Circle, CircleSetUp } from "./circle.ts";
import { judgeSetUps } from "./judge-set-ups.ts";
import { MADE, STANDS } from "./known-set-up.ts";
import { LongestPaths, NO_PATH } from "./longest-paths.ts";
import { TouchedPairs } from "./touched-pairs.ts";

/**
 * What every solution below one node of the search must keep to. Three closed networks of difference constraints speak
 * of the same tasks: their minutes on the circle, their turns (whole numbers), and their starts, where
 * start = minute + turn x period. For every pair each of the three is bounded by the other two; besides, two tasks that
 * hinder each other stand on the circle in one order or the other, and every task lies in one session.
 */
export class Relaxation {
  readonly circle: Circle;
  readonly size: number;
  /** The most minutes a period may have; the least unless a range of them is looked at. */
  readonly longest: number;
  /** The node after the tasks is minute 0. The two others leave it alone, so that a pair has one place in all three. */
  readonly minutes: LongestPaths;
  readonly turns: LongestPaths;
  readonly starts: LongestPaths;
  /** `before[u * size + v]`: u is known to stand before v on the circle. */
  readonly before: Uint8Array;
  readonly setUps: Uint8Array;
  /** By task whose set-up STANDS: the task that used it last; -1: it always stands. */
  readonly hosts: Int16Array;
  /** By task whose set-up STANDS: 1 where that was one turn of the circle before. */
  readonly overnight: Uint8Array;
  /** `mayLieIn[task * sessions + session]` */
  readonly mayLieIn: Uint8Array;
  /** `owing[station * sessions + session]`: minutes of putting away that the session is known to owe for the station. */
  readonly owing: Int32Array;
  /** The two tables of the circle in one row each, less than 0 for none; where the set-up is made, with its minutes. */
  readonly apartStanding: Int32Array;
  readonly apartMade: Int32Array;
  readonly #touched: TouchedPairs;

  constructor(circle: Circle, from?: Relaxation) {
    const size = circle.tasks.length;
    const sessions = circle.sessions.length;
    const stations = circle.setUps.reduce((most, { station }) => Math.max(most, station + 1), 0);
    this.circle = circle;
    this.size = size;
    this.longest = circle.longestPeriod ?? circle.period;
    this.minutes = from?.minutes.copy() ?? new LongestPaths(size + 1);
    this.turns = from?.turns.copy() ?? new LongestPaths(size + 1);
    this.starts = from?.starts.copy() ?? new LongestPaths(size + 1);
    this.before = from?.before.slice() ?? new Uint8Array(size * size);
    this.setUps = from?.setUps.slice() ?? new Uint8Array(size);
    this.hosts = from?.hosts.slice() ?? new Int16Array(size).fill(-1);
    this.overnight = from?.overnight.slice() ?? new Uint8Array(size);
    this.mayLieIn = from?.mayLieIn.slice() ?? new Uint8Array(size * sessions).fill(1);
    this.owing = from?.owing.slice() ?? new Int32Array(stations * sessions);
    this.#touched = new TouchedPairs(size + 1);
    this.apartStanding = from?.apartStanding ?? Int32Array.from(circle.apart.flat(), (least) => least ?? -1);
    this.apartMade =
      from?.apartMade ??
      Int32Array.from(circle.apartFromSetUp.flat(), (least, index) => {
        return least === null ? -1 : least + (this.setUpOf(index % size)?.minutes ?? 0);
      });
  }

  /** Only of one whose conclusions are drawn. */
  copy(): Relaxation {
    return new Relaxation(this.circle, this);
  }

  /** minute(to) >= minute(from) + length; `size` as a task is minute 0. */
  raiseMinute(from: number, to: number, length: number): boolean {
    return this.minutes.raise(from, to, length, this.#touched);
  }

  raiseTurn(from: number, to: number, length: number): boolean {
    return this.turns.raise(from, to, length, this.#touched);
  }

  raiseStart(from: number, to: number, length: number): boolean {
    return this.starts.raise(from, to, length, this.#touched);
  }

  /** Its set-up is made for it, directly before it: what is known to stand before or after it moves away. */
  makeSetUp(task: number): boolean {
    if (this.setUps[task] === STANDS) return false;
    this.setUps[task] = MADE;
    for (let other = 0; other < this.size; other++) {
      if (this.isBefore(other, task) && !this.setBefore(other, task)) return false;
      if (this.isBefore(task, other) && !this.setBefore(task, other)) return false;
    }
    this.touchAll(task);
    return true;
  }

  /** Its set-up stands from its use for task `host`, the last one there; `overnight`: one turn of the circle before. */
  letStand(task: number, host: number, overnight: boolean): boolean {
    if (this.setUps[task] === MADE) return false;
    this.setUps[task] = STANDS;
    this.hosts[task] = host;
    this.overnight[task] = overnight ? 1 : 0;
    if (host < 0 || host === task) return true;
    return overnight ? this.setBefore(task, host) : this.setBefore(host, task);
  }

  /** The order of two tasks on the circle. */
  setBefore(first: number, then: number): boolean {
    if (this.before[then * this.size + first] === 1) return false;
    this.before[first * this.size + then] = 1;
    const there = Math.max(1, this.apart(first, then) ?? 1);
    const back = this.apart(then, first) ?? 0;
    return this.raiseMinute(first, then, there) && this.raiseMinute(then, first, back - this.longest);
  }

  isBefore(first: number, then: number): boolean {
    return this.before[first * this.size + then] === 1;
  }

  /** The task lies in the bench session. */
  lieIn(task: number, session: number): boolean {
    const count = this.circle.sessions.length;
    if (this.mayLieIn[task * count + session] !== 1) return false;
    this.mayLieIn.fill(0, task * count, (task + 1) * count);
    this.mayLieIn[task * count + session] = 1;
    this.touch(task, this.size);
    return true;
  }

  /** Least minutes from the start of one task to that of another after it, with what is known of its set-up. */
  apart(from: number, to: number): number | null {
    const table = this.setUps[to] === MADE ? this.apartMade : this.apartStanding;
    const least = table[from * this.size + to] as number;
    return least < 0 ? null : least;
  }

  setUpOf(task: number): CircleSetUp | null {
    const setUp = this.circle.tasks[task]?.setUp ?? null;
    return setUp === null ? null : (this.circle.setUps[setUp] ?? null);
  }

  /** Conclusions are to be drawn of two tasks, or of one and its session (`size`). */
  touch(one: number, other: number): void {
    this.#touched.add(one, other);
  }

  touchAll(node: number): void {
    for (let other = 0; other <= this.size; other++) if (other !== node) this.touch(node, other);
  }

  /** Nothing was added since conclusions were drawn. */
  get settled(): boolean {
    return this.#touched.isEmpty;
  }

  /** Draws every conclusion from what was added. @returns false: no solution is left */
  propagate(): boolean {
    const nodes = this.size + 1;
    const touched = this.#touched;
    do {
      while (!touched.isEmpty) {
        const pair = touched.take();
        const one = Math.floor(pair / nodes);
        const other = pair % nodes;
        const holds = other === this.size ? this.#judgeSession(one) : this.#judgePair(one, other);
        if (!holds) return false;
      }
      if (!judgeSetUps(this) || !this.#judgeGaps()) return false;
    } while (!touched.isEmpty);
    return true;
  }

  #judgePair(one: number, other: number): boolean {
    const nodes = this.size + 1;
    const there = one * nodes + other;
    const back = other * nodes + one;
    return (
      this.#coupleTurns(one, other, there, back) &&
      this.#coupleTurns(other, one, back, there) &&
      this.#judgeOrder(one, other)
    );
  }

  /**
   * Bounds of start, minute and turn of `to` less those of `from`, each from the two others; the lower ends. Nearly all
   * say nothing new, and go no further than here.
   *
   * @param there place of the pair in each network, `back` that of the pair turned round
   */
  #coupleTurns(from: number, to: number, there: number, back: number): boolean {
    const { longest } = this;
    const { period } = this.circle;
    const minutes = this.minutes.lengths;
    const turns = this.turns.lengths;
    const starts = this.starts.lengths;
    const leastTurn = turns[there] as number;
    if (leastTurn > NO_PATH) {
      const start = (minutes[there] as number) + leastTurn * (leastTurn > 0 ? period : longest);
      if (start > (starts[there] as number) && !this.raiseStart(from, to, start)) return false;
    }
    const leastStart = starts[there] as number;
    if (leastStart <= NO_PATH) return true;
    const over = leastStart + (minutes[back] as number);
    const turn = Math.ceil(over / (over > 0 ? longest : period));
    if (turn > (turns[there] as number) && !this.raiseTurn(from, to, turn)) return false;
    const lessTurn = turns[back] as number;
    if (lessTurn <= NO_PATH) return true;
    const minute = leastStart + lessTurn * (lessTurn > 0 ? period : longest);
    return minute <= (minutes[there] as number) || this.raiseMinute(from, to, minute);
  }

  /** Two tasks that hinder each other: where one order is impossible, the other is settled. */
  #judgeOrder(one: number, other: number): boolean {
    const { size } = this;
    if (this.before[one * size + other] === 1 || this.before[other * size + one] === 1) return true;
    const there = this.apart(one, other);
    const back = this.apart(other, one);
    if (there === null || back === null) return true;
    const least = this.minutes.least(one, other);
    const most = -this.minutes.least(other, one);
    const oneFirst = most >= there && least <= this.longest - back;
    const otherFirst = least <= -back && most >= there - this.longest;
    if (oneFirst && otherFirst) return true;
    if (oneFirst) return this.setBefore(one, other);
    return otherFirst && this.setBefore(other, one);
  }

  /** A task lies in a session that is long enough for it, with its set-up before and what must be put away after, in fit air. */
  #judgeSession(task: number): boolean {
    const { sessions, tasks } = this.circle;
    const { minutes = 0, stays = 0, unfit = [] } = tasks[task] ?? {};
    const earliest = this.minutes.least(this.size, task);
    const latest = -this.minutes.least(task, this.size);
    const head = this.setUps[task] === MADE ? (this.setUpOf(task)?.minutes ?? 0) : 0;
    let from = Number.POSITIVE_INFINITY;
    let until = Number.NEGATIVE_INFINITY;
    let only = -1;
    for (let session = 0; session < sessions.length; session++) {
      const place = task * sessions.length + session;
      if (this.mayLieIn[place] !== 1) continue;
      const { opens = 0, closes = 0 } = sessions[session] ?? {};
      const first = firstFit(unfit, minutes, Math.max(earliest, opens + head));
      const shuts = Math.min(latest, closes - Math.max(stays, minutes + this.owed(session, task)));
      const last = lastFit(unfit, minutes, shuts);
      if (first > last) {
        this.mayLieIn[place] = 0;
        continue;
      }
      only = from === Number.POSITIVE_INFINITY ? session : -1;
      from = Math.min(from, first);
      until = Math.max(until, last);
    }
    if (from > until) return false;
    if (only >= 0) this.#owe(task, only);
    return this.raiseMinute(this.size, task, from) && this.raiseMinute(task, this.size, -until);
  }

  /** Minutes of putting away that a session owes at its end when the task lies in it. */
  owed(session: number, task: number): number {
    const own = this.setUpOf(task);
    const count = this.circle.sessions.length;
    let sum = 0;
    for (let place = session, station = 0; place < this.owing.length; place += count, station++) {
      const known = this.owing[place] as number;
      sum += own?.station === station ? Math.max(known, own.putAway) : known;
    }
    return sum;
  }

  /** A task that can lie in one session only makes that session owe the putting away of what it uses. */
  #owe(task: number, session: number): void {
    const setUp = this.setUpOf(task);
    if (setUp === null) return;
    const place = setUp.station * this.circle.sessions.length + session;
    if ((this.owing[place] as number) >= setUp.putAway) return;
    this.owing[place] = setUp.putAway;
    this.touchAll(this.size);
  }

  /** A wait that is past the shut of one window is until the opening of the next. */
  #judgeGaps(): boolean {
    for (const { from, to, gaps } of this.circle.lags) {
      for (const { shuts, opens } of gaps ?? []) {
        const past = this.starts.least(from, to) > shuts;
        if (past && !this.raiseStart(from, to, opens)) return false;
        const short = -this.starts.least(to, from) < opens;
        if (short && !this.raiseStart(to, from, -shuts)) return false;
      }
    }
    return true;
  }
}

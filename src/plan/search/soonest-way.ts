import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Bench, BenchTask, BenchWindow } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import type { KeptWork } from "./kept-work.ts";
import { addStretch, earliestWithin, join, latestWithin, meet, type Stretches } from "./stretches.ts";

/** What hangs, dries or stands for longer than so after its task ended is not looked for. */
const FAR: Minutes = 240;

/**
 * Finds for one piece the way through its tasks that ends soonest, between work that keeps its minutes (optimal job
 * insertion: T. Kis, A. Hertz, A lower bound for the job insertion problem, Discrete Applied Mathematics 128, 2003). Which
 * minutes a task may start at follows from those of the tasks before it, so that task by task all starts are known that
 * some way leads to; then the way is read backward.
 *
 * Hands, hours, windows, set-ups, air, hooks and the limit on pieces out are minded; with several pairs of hands a task
 * is only put where all are free. Looks, unfit air, what preparations take and what the piece itself puts into the air
 * are not: a way is a proposal, to be played.
 */
export class SoonestWay {
  readonly #bench: Bench;
  readonly #work: KeptWork;
  /** By task: when it begins and ends on the way found. */
  readonly begin: Int32Array;
  readonly end: Int32Array;
  #until: Minutes = NEVER;
  /** By task of the way: the starts that some way leads to, and those that need no setting up. */
  readonly #reach: Stretches[] = [];
  readonly #bare: Stretches[] = [];
  /** By task that keeps its minutes: what ends later is in the way of it or of one after it. */
  readonly #latest: Int32Array;

  constructor(bench: Bench, work: KeptWork) {
    this.#bench = bench;
    this.#work = work;
    this.begin = new Int32Array(bench.tasks.length);
    this.end = new Int32Array(bench.tasks.length);
    this.#latest = new Int32Array(bench.tasks.length);
  }

  /**
   * @param tasks all tasks to do of one piece, none before one that it waits for
   * @param isOut whether the piece was begun before
   * @param late as late as the end allows, or as early
   * @returns when the last task ends; null: no way was found that ends before `until`
   */
  find(
    tasks: readonly BenchTask[],
    { from, until, isOut, late }: { from: Minutes; until: Minutes; isOut: boolean; late: boolean },
  ): Minutes | null {
    const [first] = tasks;
    const { mostOut } = this.#bench;
    if (first === undefined) return null;
    const { piece } = first;
    if (mostOut === null || isOut || !piece.underLimit) return this.#findWithin(tasks, from, until, late);
    const room = this.#work.roomUnder(mostOut);
    for (let index = 0; index < room.length; index += 2) {
      const since = Math.max(from, room[index] as Minutes);
      const end = Math.min(until, (room[index + 1] as Minutes) + 1 - piece.cure);
      const found = since < end ? this.#findWithin(tasks, since, end, late) : null;
      if (found !== null) return found;
    }
    return null;
  }

  #findWithin(tasks: readonly BenchTask[], from: Minutes, until: Minutes, late: boolean): Minutes | null {
    this.#until = until;
    let least = from;
    for (const [place, task] of tasks.entries()) {
      const reach = this.#reachOf(tasks, place, least);
      this.#reach[place] = reach;
      const [soonest] = reach;
      if (soonest === undefined) return null;
      least = soonest + task.minutes;
    }
    return this.#goBack(tasks, late) ? least : null;
  }

  /** Starts of a task that the tasks before it let it have; notes which of them need no setting up. */
  #reachOf(tasks: readonly BenchTask[], place: number, least: Minutes): Stretches {
    const task = tasks[place] as BenchTask;
    const lead = leadOf(task);
    // Setting up may come before its windows open, but not before the task before it ends.
    const hands = Math.max(least, task.release);
    const span = { hands, from: hands, to: this.#until - task.minutes };
    let open: Stretches = [0, NEVER];
    let openSetUp: Stretches = [0, NEVER];
    for (const { on, windows } of task.waits) {
      const before = tasks.indexOf(on);
      if (before >= 0) {
        const reach = this.#reach[before] as Stretches;
        open = meet(open, startsAfter(reach, on.minutes, windows, 0));
        if (lead > 0) openSetUp = meet(openSetUp, startsAfter(reach, on.minutes, windows, lead));
      } else {
        const [first] = windows;
        if (first !== undefined)
          span.from = Math.max(span.from, openingAfter(first.opens, on.end) + first.lead);
        span.to = Math.min(span.to, shutAfter(windows.at(-1)?.shuts ?? null, on.end));
      }
    }
    if (open.length === 0) return open;
    span.from = Math.max(span.from, open[0] as Minutes);
    span.to = Math.min(span.to, open[open.length - 1] as Minutes);
    if (span.from > span.to) return [];
    const { bare, withSetUp } = this.#freeStarts(tasks, place, span);
    this.#bare[place] = meet(bare, open);
    return lead === 0
      ? (this.#bare[place] as Stretches)
      : join(this.#bare[place] as Stretches, meet(withSetUp, openSetUp));
  }

  /** Starts at which hours, hands, air, hooks and its station let a task go. */
  #freeStarts(
    tasks: readonly BenchTask[],
    place: number,
    { hands, from, to }: { hands: Minutes; from: Minutes; to: Minutes },
  ): { bare: Stretches; withSetUp: Stretches } {
    const work = this.#work;
    const { keepsOut, airs } = this.#bench;
    const task = tasks[place] as BenchTask;
    const { station, minutes, airKind } = task;
    const lead = leadOf(task);
    const first = work.firstFrom(hands - FAR);
    const end = this.#readLatest(task, first, from, to);
    const bare: Stretches = [];
    const withSetUp: Stretches = [];
    let low = hands;
    let use = lead > 0 ? this.#lastUse(task, first) : -1;
    let next = first;
    const own = lead > 0 ? this.#ownUse(tasks, place) : null;
    for (let index = first - 1; index < end; index++) {
      if (index >= first) {
        const other = work.tasks[index] as BenchTask;
        low = Math.max(
          low,
          (work.ends[index] as Minutes) + (keepsOut[other.airKind * airs + airKind] as number),
        );
        if (other.station === station) use = index;
      }
      const by = Math.min(to + minutes, index + 1 < end ? (this.#latest[index + 1] as Minutes) : NEVER);
      if (low + minutes > by) continue;
      if (lead === 0) {
        this.#addSessions(bare, task, Math.max(from, this.#hooked(task, index, low)), by, 0);
        continue;
      }
      while (next < work.count && (next <= index || work.tasks[next]?.station !== station)) next++;
      if (this.#takesAway(task, next)) continue;
      const since = Math.max(from, this.#hooked(task, index, low));
      this.#addSessions(withSetUp, task, Math.max(since, low + lead), by, lead);
      const began = use < 0 ? -1 : (work.begins[use] as Minutes);
      const stands = own !== null && began < own ? -1 : this.#standsUntil(task, use);
      this.#addSessions(bare, task, since, Math.min(by, stands + minutes), 0);
    }
    return { bare, withSetUp };
  }

  /** Notes what is in the way of later tasks. @returns the first place that is out of sight */
  #readLatest({ airKind, hook, minutes }: BenchTask, first: number, from: Minutes, to: Minutes): number {
    const work = this.#work;
    const { keepsOut, airs } = this.#bench;
    if (hook !== null) work.readHooks(hook.place);
    const hangs = hook === null ? 0 : openingAfter(hook.until, from + minutes) - from - minutes;
    let end = first;
    while (end < work.count && (work.begins[end] as Minutes) <= to + minutes + FAR) end++;
    let latest = NEVER;
    for (let index = end - 1; index >= first; index--) {
      const other = work.tasks[index] as BenchTask;
      const apart = keepsOut[airKind * airs + other.airKind] as number;
      latest = Math.min(latest, (work.begins[index] as Minutes) - apart);
      if (hook !== null && work.takesLast[index] === 1) {
        latest = Math.min(latest, (work.ends[index] as Minutes) - hangs);
      }
      this.#latest[index] = latest;
    }
    return end;
  }

  /** Not before a hook is free by the end of the task. */
  #hooked({ hook, minutes }: BenchTask, after: number, from: Minutes): Minutes {
    return hook === null || after < 0
      ? from
      : Math.max(from, (this.#work.hookFree[after] as Minutes) - minutes);
  }

  /** Puts in the starts between two minutes in which a task fits a session, setting up included. */
  #addSessions(to: Stretches, task: BenchTask, from: Minutes, by: Minutes, lead: Minutes): void {
    const { calendar, horizon } = this.#bench;
    const past = Math.max(task.setUp?.putAway ?? 0, task.watched);
    for (let session = calendar.at(from); ; session++) {
      const opens = calendar.opening(session);
      if (opens >= by || opens >= horizon) return;
      const first = Math.max(from, opens + lead);
      const last = Math.min(by, calendar.closing(session) - past) - task.minutes;
      if (first <= last) addStretch(to, first, last);
    }
  }

  /** The last use of the task's station before a place. */
  #lastUse({ station }: BenchTask, place: number): number {
    let use = place - 1;
    while (use >= 0 && this.#work.tasks[use]?.station !== station) use--;
    return use;
  }

  /** Until when a task before it on the way may leave something else at its station; null: none does. */
  #ownUse(tasks: readonly BenchTask[], place: number): Minutes | null {
    const { station, setUp } = tasks[place] as BenchTask;
    for (let before = place - 1; before >= 0; before--) {
      const other = tasks[before] as BenchTask;
      if (other.station !== station) continue;
      if (other.setUp === setUp && setUp?.way === "load") return null;
      return (this.#reach[before]?.at(-1) ?? 0) + other.minutes;
    }
    return null;
  }

  /** The last minute at which a task may start with what stands after a use of its station; -1: none. */
  #standsUntil({ setUp, station, minutes }: BenchTask, use: number): Minutes {
    if (setUp === null || station === null) return NEVER;
    if (use < 0) return station.any ? NEVER : -1;
    if (this.#work.tasks[use]?.setUp !== setUp) return -1;
    if (setUp.way === "load") return NEVER;
    return setUp.way === "heat"
      ? (this.#work.ends[use] as Minutes) + setUp.keeps
      : (this.#work.begins[use] as Minutes) + setUp.keeps - minutes;
  }

  /** Whether a later use of the station counts on what stands there, and the task would need another. */
  #takesAway({ setUp }: BenchTask, use: number): boolean {
    const later = this.#work.tasks[use];
    if (later === undefined || later.setUp === null || later.setUp === setUp) return false;
    return (this.#work.ends[use] as Minutes) - (this.#work.begins[use] as Minutes) === later.minutes;
  }

  /** Reads the way from its end. @returns false: where tasks wait for several others, none may lead there after all */
  #goBack(tasks: readonly BenchTask[], late: boolean): boolean {
    let before = NEVER;
    for (let place = tasks.length - 1; place >= 0; place--) {
      const task = tasks[place] as BenchTask;
      const reach = this.#reach[place] as Stretches;
      const [least, most] = this.#boundsBefore(task, before);
      const soonest = late && before < NEVER ? latestWithin : earliestWithin;
      const start = soonest(reach, least - task.minutes, most - task.minutes);
      if (start === null) return false;
      const isBare = earliestWithin(this.#bare[place] as Stretches, start, start) !== null;
      before = isBare ? start : start - (task.setUp?.minutes ?? 0);
      this.begin[task.index] = before;
      this.end[task.index] = start + task.minutes;
    }
    return true;
  }

  /** From when to when a task may end, for those after it on the way. */
  #boundsBefore(task: BenchTask, before: Minutes): [Minutes, Minutes] {
    let [least, most] = [0, before];
    for (const { task: next, windows } of task.awaited) {
      if (next.piece !== task.piece) continue;
      const start = (this.end[next.index] as Minutes) - next.minutes;
      const [first] = windows;
      const shuts = windows.at(-1)?.shuts ?? null;
      // Of waits by a table only the play knows.
      if (first !== undefined && typeof first.opens === "number")
        most = Math.min(most, start - first.opens - first.lead);
      if (typeof shuts === "number") least = Math.max(least, start - shuts);
    }
    return [least, most];
  }
}

/** Minutes of setting up, where nothing stands. */
function leadOf({ setUp, station }: BenchTask): Minutes {
  return setUp === null || station === null ? 0 : setUp.minutes;
}

/** When a task may start that waits for one with such starts, and has so much to set up once that is done. */
function startsAfter(
  reach: Stretches,
  minutes: Minutes,
  windows: readonly BenchWindow[],
  setUp: Minutes,
): Stretches {
  let starts: Stretches = [];
  for (const { opens, shuts, lead } of windows) {
    const own: Stretches = [];
    for (let index = 0; index < reach.length; index += 2) {
      const end = (reach[index] as Minutes) + minutes;
      const first = Math.max(openingAfter(opens, end) + lead, end + setUp);
      const last = Math.min(NEVER, shutAfter(shuts, (reach[index + 1] as Minutes) + minutes));
      if (first <= last) addStretch(own, first, last);
    }
    starts = starts.length === 0 ? own : join(starts, own);
  }
  return starts;
}

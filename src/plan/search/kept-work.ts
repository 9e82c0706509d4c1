import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchPiece, BenchPlace, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { addStretch, type Stretches } from "./stretches.ts";

/** Work that keeps its minutes while a way is looked for between it, in order of begin. */
export class KeptWork {
  readonly tasks: BenchTask[] = [];
  readonly begins: Int32Array;
  readonly ends: Int32Array;
  count = 0;
  /** By task, of the place read last: when a hook is free after it, and whether it takes the last one. */
  readonly hookFree: Int32Array;
  readonly takesLast: Uint8Array;
  /** Begin and finish of each piece out that counts under the limit, by turns. */
  readonly #out: Minutes[] = [];
  /** The place of which hooks are read. */
  #place: BenchPlace | null = null;

  constructor({ tasks }: Bench) {
    this.begins = new Int32Array(tasks.length);
    this.ends = new Int32Array(tasks.length);
    this.hookFree = new Int32Array(tasks.length);
    this.takesLast = new Uint8Array(tasks.length);
  }

  clear(): void {
    this.count = 0;
    this.tasks.length = 0;
    this.#out.length = 0;
    this.#place = null;
  }

  /** Puts in a task that begins at a minute: behind those that begin no later. */
  add(task: BenchTask, begin: Minutes, end: Minutes): void {
    const { tasks, begins, ends } = this;
    let place = this.count++;
    for (; place > 0 && (begins[place - 1] as Minutes) > begin; place--) {
      tasks[place] = tasks[place - 1] as BenchTask;
      begins[place] = begins[place - 1] as Minutes;
      ends[place] = ends[place - 1] as Minutes;
    }
    tasks[place] = task;
    begins[place] = begin;
    ends[place] = end;
    this.#place = null;
  }

  /** Counts a piece as out from begin to finish. */
  addOut({ underLimit }: BenchPiece, begin: Minutes, finish: Minutes): void {
    if (underLimit) this.#out.push(begin, finish);
  }

  /** The first task that ends at a minute or later. */
  firstFrom(minute: Minutes): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.ends[middle] as Minutes) < minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** When fewer than the limit are out. */
  roomUnder(limit: number): Stretches {
    // Who finishes at a minute makes room for who begins then.
    const changes = this.#out
      .map((minute, index) => 2 * minute + (index % 2 === 0 ? 1 : 0))
      .sort((a, b) => a - b);
    const room: Stretches = [];
    let out = 0;
    let since = 0;
    for (const change of changes) {
      const minute = Math.floor(change / 2);
      if (change % 2 === 0) {
        out--;
        if (out === limit - 1) since = minute;
      } else {
        out++;
        if (out === limit && minute > since) addStretch(room, since, minute - 1);
      }
    }
    addStretch(room, since, NEVER);
    return room;
  }

  /** Notes of each task when a hook is free after it. */
  readHooks(place: BenchPlace): void {
    if (this.#place === place) return;
    this.#place = place;
    const until = new Int32Array(place.hooks);
    for (let index = 0; index < this.count; index++) {
      const { hook } = this.tasks[index] as BenchTask;
      const end = this.ends[index] as Minutes;
      const hangs = hook !== null && hook.place === place;
      if (hangs) until[leastOf(until)] = Math.min(NEVER, openingAfter(hook.until, end));
      const free = until.length === 0 ? NEVER : (until[leastOf(until)] as Minutes);
      this.hookFree[index] = free;
      this.takesLast[index] = hangs && free > end ? 1 : 0;
    }
  }
}

/** @returns the place of the least, -1 of none */
function leastOf(values: Int32Array): number {
  let least = values.length - 1;
  for (let index = 0; index < least; index++) {
    if ((values[index] as number) < (values[least] as number)) least = index;
  }
  return least;
}

import type { Minutes } from "../../time/instant.ts";
import { openingAfter } from "../lag.ts";
import type { Bench, BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { isToDo } from "./order-of.ts";

/** Tells which work still to do may come free by some minute, as far as waits and work alone tell. */
export class ComingFree {
  readonly #tasks: readonly BenchTask[];
  /** By task still to do: a minute before which it cannot begin. */
  readonly #soonest: Float64Array;

  constructor({ tasks }: Bench) {
    this.#tasks = tasks.filter(isToDo);
    this.#soonest = new Float64Array(tasks.length);
  }

  /** The tasks not in the order that stands that may come free before a minute. */
  before(until: Minutes): BenchTask[] {
    const soonest = this.#soonest;
    const free: BenchTask[] = [];
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
      if (comesFree) free.push(task);
    }
    return free;
  }
}

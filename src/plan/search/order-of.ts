import type { Plan } from "../plan.ts";
import { type Bench, type BenchTask, DECIDED } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/**
 * The order in which a plan begins the tasks, as far as they are still to do; those it knows nothing of come last. No
 * task stands before one that it waits for, whatever the plan says.
 */
export function orderOf({ tasks }: Bench, plan: Plan): BenchTask[] {
  const begins = new Map<number, number>();
  for (const { task, start, setUp } of plan.visits) {
    begins.set(task, Math.min(begins.get(task) ?? NEVER, start - setUp));
  }
  const begin = ({ index }: BenchTask): number => begins.get(index) ?? NEVER;
  const order: BenchTask[] = [];
  const added = new Set<BenchTask>();
  const add = (task: BenchTask): void => {
    if (added.has(task) || !isToDo(task)) return;
    added.add(task);
    for (const { on } of task.waits) add(on);
    order.push(task);
  };
  for (const task of tasks.toSorted((a, b) => begin(a) - begin(b) || a.index - b.index)) add(task);
  return order;
}

/** What a plan decides about set-ups, as a solution keeps it: which melts and cups are shared, and which are made anew. */
export function decisionsOf(order: readonly BenchTask[], { visits }: Plan): Int32Array {
  const setUps = new Map(visits.map(({ task, setUp }) => [task, setUp]));
  const decided = new Int32Array(2 * order.length);
  for (const [place, { index, setUp }] of order.entries()) {
    if (setUp === null || setUp.way === "load") continue;
    const made = setUps.get(index) ?? 0;
    decided[2 * place + 1] =
      made === 0 ? DECIDED.shares : setUp.way === "mix" ? DECIDED.fresh : DECIDED.nothing;
  }
  return decided;
}

/** Whether a play has to place the task. */
export function isToDo({ running, ended }: BenchTask): boolean {
  return !running && ended === null;
}

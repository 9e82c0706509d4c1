import type { BenchTask } from "./bench.ts";

/** Puts a task among those before a place, which stand by rank, least first: behind all of its own rank. */
export function sortIn(tasks: BenchTask[], task: BenchTask, end: number, ranks: Float64Array): void {
  const rank = ranks[task.index] as number;
  let place = end;
  for (; place > 0; place--) {
    const before = tasks[place - 1] as BenchTask;
    if ((ranks[before.index] as number) <= rank) break;
    tasks[place] = before;
  }
  tasks[place] = task;
}

/** Takes a task out; the others keep their order. @returns false: it is not among them */
export function takeOut(tasks: BenchTask[], task: BenchTask): boolean {
  const place = tasks.indexOf(task);
  if (place < 0) return false;
  // By hand, as `splice` makes a list of what it takes out.
  for (let after = place + 1; after < tasks.length; after++) tasks[after - 1] = tasks[after] as BenchTask;
  tasks.pop();
  return true;
}

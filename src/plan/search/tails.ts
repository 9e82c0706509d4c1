import type { Minutes } from "../../time/instant.ts";
import type { Bench, BenchTask, BenchWait } from "./bench.ts";
import { NEVER } from "./calendar.ts";

/**
 * Writes into every task how soon its piece can be finished after it, if hands, stations and hooks were always free:
 * in plain minutes, and by the session in which the task ends. Both are bounds from below for every play.
 */
export function measureTails(bench: Bench): void {
  // Tasks stand after those they wait for, so one sweep from the last is enough.
  for (let index = bench.tasks.length - 1; index >= 0; index--) {
    const task = bench.tasks[index];
    if (task !== undefined) measureTail(bench, task);
  }
}

/** The same of one task, when those after it have been measured. */
export function measureTail(bench: Bench, task: BenchTask): void {
  const { calendar } = bench;
  const sessions = calendar.opens.length;
  const { awaited } = task;
  task.tail = task.piece.cure;
  task.leastFinish = new Int32Array(sessions);
  for (let place = 0; place < awaited.length; place++) {
    const wait = awaited[place] as BenchWait;
    const next = wait.task;
    task.tail = Math.max(task.tail, leastWait(wait) + next.minutes + next.tail);
  }
  for (let session = 0; session < sessions; session++) {
    const end = Math.max(0, calendar.opening(session));
    let finish = Math.min(NEVER, end + task.tail);
    for (let place = 0; place < awaited.length; place++) {
      const wait = awaited[place] as BenchWait;
      const next = wait.task;
      const need = next.mayStop ? 1 : next.minutes;
      const start = calendar.meeting(Math.max(next.release, end + leastWait(wait)), 0, need);
      if (start >= NEVER) finish = NEVER;
      else {
        const done = start + need;
        finish = Math.max(finish, next.leastFinish[calendar.at(done - 1)] ?? NEVER, done + next.tail);
      }
    }
    task.leastFinish[session] = finish;
  }
  task.usualRest = usualRest(bench, task);
  task.restLog = Math.log(task.usualRest + 1440);
}

/** Sessions that `usualRest` looks at: about two weeks. */
const USUAL = 14;

function usualRest({ calendar }: Bench, { tail, leastFinish }: BenchTask): Minutes {
  let sum = 0;
  let count = 0;
  for (let session = 0; session < Math.min(USUAL, leastFinish.length); session++) {
    const finish = leastFinish[session] as number;
    if (finish >= NEVER) continue;
    sum += finish - Math.max(0, calendar.opening(session));
    count++;
  }
  return count < 4 ? tail : sum / count;
}

/** The wait as far as it is known beforehand; one that depends on the air counts as none. */
function leastWait({ windows }: BenchWait): Minutes {
  const opens = windows[0]?.opens;
  return typeof opens === "number" ? Math.max(0, opens) : 0;
}

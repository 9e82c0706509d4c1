import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { beginMend } from "./begin-mend.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import { rankTask } from "./priority.ts";
import { emptyTrial, type Trial, tryTask } from "./try-task.ts";

/** What to begin at a minute, and how; without a task, the next minute worth a try. Written over by each choice. */
export interface Choice {
  task: TaskRun | null;
  trial: Trial;
  spare: Trial;
  next: Minutes;
}

export function emptyChoice(): Choice {
  return { task: null, trial: emptyTrial(), spare: emptyTrial(), next: 0 };
}

/**
 * Tries every candidate at minute `t` of the open session and keeps the best that can begin. One that does not press
 * gives way when, by the time it is done, a window that opens in this session would have shut.
 */
export function chooseTask(run: BenchRun, t: Minutes, choice: Choice): void {
  choice.task = null;
  choice.next = Number.POSITIVE_INFINITY;
  const awaited = latestAwaited(run, t, choice);
  let pressing = false;
  let key = 0;
  // From the last to the first: a mend that begins takes its followers off the list.
  for (let index = run.candidates.length - 1; index >= 0; index--) {
    const task = run.candidates[index];
    if (task === undefined || task.wake > t) continue;
    const ready = tryTask(run, task, t, choice.spare);
    if (choice.spare.missed !== null) {
      giveUpWindow(run, task, choice);
      continue;
    }
    if (ready > t) {
      choice.next = Math.min(choice.next, ready);
      continue;
    }
    const rank = rankTask(run, task, t, choice.spare);
    if (!rank.pressing && choice.spare.end > awaited) continue;
    if (choice.task !== null && !goesFirst(rank.pressing, rank.key, task, pressing, key, choice.task))
      continue;
    ({ pressing, key } = rank);
    choice.task = task;
    [choice.trial, choice.spare] = [choice.spare, choice.trial];
  }
}

/** The least `latest` among tasks that wake in this session and cannot wait for the next one; Infinity: none. */
function latestAwaited(run: BenchRun, t: Minutes, choice: Choice): Minutes {
  const { sessions } = run.prepared.problem;
  const { closes } = at(sessions, run.session);
  const nextOpens = sessions[run.session + 1]?.opens ?? Number.POSITIVE_INFINITY;
  let awaited = Number.POSITIVE_INFINITY;
  for (const { wake, latest } of run.candidates) {
    if (wake <= t) continue;
    choice.next = Math.min(choice.next, wake);
    if (wake < closes && latest < nextOpens) awaited = Math.min(awaited, latest);
  }
  return awaited;
}

/** Ties go to the lower number, so the order of the list never matters. */
function goesFirst(
  pressing: boolean,
  key: number,
  task: TaskRun,
  bestPressing: boolean,
  bestKey: number,
  best: TaskRun,
): boolean {
  if (pressing !== bestPressing) return pressing;
  if (key !== bestKey) return pressing ? key < bestKey : key > bestKey;
  return task.index < best.index;
}

/** With a mend to come the bench is looked at again at once; without one the task cannot be placed any more. */
function giveUpWindow(run: BenchRun, task: TaskRun, choice: Choice): void {
  const { missed } = choice.spare;
  if (missed !== null && beginMend(run, missed)) choice.next = 0;
  else run.candidates.splice(run.candidates.indexOf(task), 1);
}

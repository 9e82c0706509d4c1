import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { beginMend } from "./begin-mend.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import { goesBefore, rankTask } from "./priority.ts";
import { emptyTrial, type Trial, tryTask } from "./try-task.ts";

/** What to begin at a minute, and how; without a task, the next minute worth a try. Written over by each choice. */
export interface Choice {
  task: TaskRun | null;
  readonly trial: Trial;
  next: Minutes;
  /** Candidates still to be tried. */
  readonly awake: TaskRun[];
}

export function emptyChoice(): Choice {
  return { task: null, trial: emptyTrial(), next: 0, awake: [] };
}

/**
 * Tries the candidates at minute `t` of the open session, best first, and takes the first that can begin. One that
 * does not press gives way when, by the time it is done, a window that opens in this session would have shut.
 */
export function chooseTask(run: BenchRun, t: Minutes, choice: Choice): void {
  choice.task = null;
  choice.next = Number.POSITIVE_INFINITY;
  const awaited = wakeCandidates(run, t, choice);
  const { awake, trial } = choice;
  while (awake.length > 0) {
    const task = takeBest(awake);
    const ready = tryTask(run, task, t, trial);
    if (trial.missed !== null) {
      giveUpWindow(run, task, choice);
      return;
    }
    if (ready > t) choice.next = Math.min(choice.next, ready);
    else if (task.rank.pressing || trial.end <= awaited) {
      choice.task = task;
      return;
    }
  }
}

/**
 * Ranks those that are awake.
 *
 * @returns the least `latest` among tasks that wake in this session and cannot wait for the next one; Infinity: none
 */
function wakeCandidates(run: BenchRun, t: Minutes, choice: Choice): Minutes {
  const { sessions } = run.prepared.problem;
  const { closes } = at(sessions, run.session);
  const nextOpens = sessions[run.session + 1]?.opens ?? Number.POSITIVE_INFINITY;
  let awaited = Number.POSITIVE_INFINITY;
  choice.awake.length = 0;
  for (const task of run.candidates) {
    const { wake, latest } = task;
    if (wake <= t) {
      rankTask(run, task, t, nextOpens);
      choice.awake.push(task);
      continue;
    }
    choice.next = Math.min(choice.next, wake);
    if (wake < closes && wake <= latest && latest < nextOpens) awaited = Math.min(awaited, latest);
  }
  return awaited;
}

/** Takes the best off the list, whose order does not matter. */
function takeBest(awake: TaskRun[]): TaskRun {
  let best = 0;
  for (let index = 1; index < awake.length; index++) {
    if (goesBefore(at(awake, index), at(awake, best))) best = index;
  }
  const task = at(awake, best);
  const last = awake.pop();
  if (last !== undefined && last !== task) awake[best] = last;
  return task;
}

/** A mend is to come, or the task cannot be placed any more: either way the bench is looked at again at once. */
function giveUpWindow(run: BenchRun, task: TaskRun, choice: Choice): void {
  const { missed } = choice.trial;
  choice.next = 0;
  if (missed === null || !beginMend(run, missed)) run.candidates.splice(run.candidates.indexOf(task), 1);
}

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { beginMend } from "./begin-mend.ts";
import { type BenchRun, putAwayMinutes, type TaskRun } from "./bench-run.ts";
import { goesBefore, rankTask } from "./priority.ts";
import { emptyTrial, type Trial, tryTask } from "./try-task.ts";

/** What to begin at a minute, and how; without a task, the next minute worth a try. Written over by each choice. */
export interface Choice {
  task: TaskRun | null;
  trial: Trial;
  /** For a second task tried against the one found. */
  spare: Trial;
  next: Minutes;
  /** Candidates still to be tried. */
  readonly awake: TaskRun[];
}

export function emptyChoice(): Choice {
  return { task: null, trial: emptyTrial(), spare: emptyTrial(), next: 0, awake: [] };
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
      if (task.prepared.holdsOff.length > 0) preferHeldOff(run, t, choice, task);
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

/**
 * Before a task that leaves something in the room for long, what that would hold off goes first: sanding before the
 * varnish, not after it is dust-free. Only where the task found still has its time tonight, and if it presses, though
 * the other takes a quarter longer than thought.
 */
function preferHeldOff(run: BenchRun, t: Minutes, choice: Choice, found: TaskRun): void {
  const { awake, trial, spare } = choice;
  const { closes } = at(run.prepared.problem.sessions, run.session);
  const shuts = closes - putAwayMinutes(run, found.station, found.setUp?.putAway ?? 0);
  while (awake.length > 0) {
    const other = takeBest(awake);
    if (!holdsOff(found, other) || holdsOff(other, found)) continue;
    if (tryTask(run, other, t, spare) > t || spare.left > 0) continue;
    const minutes = spare.end - t;
    if (trial.end + minutes > shuts || (found.rank.pressing && t + 1.25 * minutes > found.rank.key)) continue;
    choice.task = other;
    choice.trial = spare;
    choice.spare = trial;
    return;
  }
}

function holdsOff(task: TaskRun, other: TaskRun): boolean {
  return other.prepared.gives.some(({ what }) => task.prepared.holdsOff.includes(what));
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

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { beginMend } from "./begin-mend.ts";
import { type BenchRun, putAwayMinutes, type TaskRun } from "./bench-run.ts";
import { isPressing, rankTask } from "./priority.ts";
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
 * does not press gives way when, by the time it is done, a window that opens in this bench session would have shut.
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
    else if (isPressing(task) || trial.end <= awaited) {
      choice.task = task;
      preferHeldOff(run, t, choice, task);
      return;
    }
  }
}

/**
 * Ranks those that are awake.
 *
 * @returns the least `latest` among tasks that wake in this bench session and cannot wait for the next one; Infinity: none
 */
function wakeCandidates(run: BenchRun, t: Minutes, choice: Choice): Minutes {
  const { sessions } = run.prepared.problem;
  const { closes } = at(sessions, run.session);
  const nextOpens = sessions[run.session + 1]?.opens ?? Number.POSITIVE_INFINITY;
  let awaited = Number.POSITIVE_INFINITY;
  const { candidates } = run;
  const { awake } = choice;
  awake.length = 0;
  for (let index = 0; index < candidates.length; index++) {
    const task = candidates[index] as TaskRun;
    const { wake, latest } = task;
    if (wake <= t) {
      rankTask(run, task, t, nextOpens);
      awake.push(task);
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
  keepHeldOff(run, awake, found);
  if (awake.length === 0) return;
  const { closes } = at(run.prepared.problem.sessions, run.session);
  const shuts = closes - putAwayMinutes(run, found.station, found.setUp?.putAway ?? 0);
  while (awake.length > 0) {
    const other = takeBest(awake);
    if (tryTask(run, other, t, spare) > t || spare.left > 0) continue;
    const minutes = spare.end - t;
    if (trial.end + minutes > shuts || (isPressing(found) && t + 1.25 * minutes > found.rank)) continue;
    choice.task = other;
    choice.trial = spare;
    choice.spare = trial;
    return;
  }
}

/** Keeps on the list only what the task found would hold off, and what would not hold it off in turn. */
function keepHeldOff(run: BenchRun, awake: TaskRun[], found: TaskRun): void {
  const { holdsOff } = run.prepared;
  const { kind } = found.prepared;
  const itHolds = at(holdsOff, kind);
  let kept = 0;
  for (let index = 0; index < awake.length; index++) {
    const task = awake[index] as TaskRun;
    const other = task.prepared.kind;
    if (itHolds[other] === true && holdsOff[other]?.[kind] !== true) awake[kept++] = task;
  }
  awake.length = kept;
}

/** Takes the best off the list, whose order does not matter: ties go to the lower number. */
function takeBest(awake: TaskRun[]): TaskRun {
  let best = at(awake, 0);
  let place = 0;
  for (let index = 1; index < awake.length; index++) {
    const task = awake[index] as TaskRun;
    if (task.rank < best.rank || (task.rank === best.rank && task.index < best.index)) {
      best = task;
      place = index;
    }
  }
  const last = awake.pop();
  if (last !== undefined && last !== best) awake[place] = last;
  return best;
}

/** A mend is to come, or the task cannot be placed any more: either way the bench is looked at again at once. */
function giveUpWindow(run: BenchRun, task: TaskRun, choice: Choice): void {
  const { missed } = choice.trial;
  choice.next = 0;
  if (missed === null || !beginMend(run, missed)) run.candidates.splice(run.candidates.indexOf(task), 1);
}

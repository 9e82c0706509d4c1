import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { beginMend } from "./begin-mend.ts";
import { type BenchRun, putAwayMinutes, type TaskRun } from "./bench-run.ts";
import { isPressing, rankTask } from "./priority.ts";
import { emptyTrial, isKeptByLimit, type Trial, tryTask } from "./try-task.ts";

/** What to begin at a minute, and how; without a task, the next minute worth a try. Written over by each choice. */
export interface Choice {
  task: TaskRun | null;
  trial: Trial;
  /** For a second task tried against the one found. */
  spare: Trial;
  next: Minutes;
  readonly awake: Awake;
}

/** Candidates still to be tried: the first `count` of a list that is never cut, with the rank of each beside it. */
interface Awake {
  readonly tasks: TaskRun[];
  readonly ranks: Float64Array;
  count: number;
}

export function emptyChoice({ tasks }: BenchRun): Choice {
  const awake: Awake = { tasks: [], ranks: new Float64Array(tasks.length), count: 0 };
  return { task: null, trial: emptyTrial(), spare: emptyTrial(), next: 0, awake };
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
  while (awake.count > 0) {
    const task = takeBest(awake);
    const rank = awake.ranks[awake.count] as number;
    const ready = tryTask(run, task, t, trial);
    if (trial.missed !== null) {
      giveUpWindow(run, task, choice);
      return;
    }
    if (ready > t) choice.next = Math.min(choice.next, ready);
    else if (isPressing(rank) || trial.end <= awaited) {
      choice.task = task;
      preferHeldOff(run, t, choice, rank);
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
  awake.count = 0;
  for (let index = 0; index < candidates.length; index++) {
    const task = candidates[index] as TaskRun;
    const { wake, latest } = task;
    // All that wait for the limit alone wait for the same: none of them is ranked and tried.
    if (wake <= t && isKeptByLimit(run, task, t)) {
      choice.next = Math.min(choice.next, run.fullUntil);
      continue;
    }
    if (wake <= t) {
      awake.ranks[awake.count] = rankTask(run, task, t, nextOpens);
      awake.tasks[awake.count++] = task;
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
 *
 * @param rank of the task found
 */
function preferHeldOff(run: BenchRun, t: Minutes, choice: Choice, rank: number): void {
  const { task: found, awake, trial, spare } = choice;
  if (found === null) return;
  keepHeldOff(run, awake, found);
  if (awake.count === 0) return;
  const { closes } = at(run.prepared.problem.sessions, run.session);
  const shuts = closes - putAwayMinutes(run, found.station, found.setUp?.putAway ?? 0);
  while (awake.count > 0) {
    const other = takeBest(awake);
    if (tryTask(run, other, t, spare) > t || spare.left > 0) continue;
    const minutes = spare.end - t;
    if (trial.end + minutes > shuts || (isPressing(rank) && t + 1.25 * minutes > rank)) continue;
    choice.task = other;
    choice.trial = spare;
    choice.spare = trial;
    return;
  }
}

/** Keeps on the list only what the task found would hold off, and what would not hold it off in turn. */
function keepHeldOff(run: BenchRun, awake: Awake, found: TaskRun): void {
  const { holdsOff } = run.prepared;
  const { kind } = found.prepared;
  const itHolds = at(holdsOff, kind);
  const { tasks, ranks, count } = awake;
  awake.count = 0;
  for (let index = 0; index < count; index++) {
    const task = tasks[index] as TaskRun;
    const other = task.prepared.kind;
    if (itHolds[other] !== true || holdsOff[other]?.[kind] === true) continue;
    tasks[awake.count] = task;
    ranks[awake.count++] = ranks[index] as number;
  }
}

/** Takes the best off the list, whose order does not matter, to where the list now ends: ties go to the lower number. */
function takeBest(awake: Awake): TaskRun {
  const { tasks, ranks } = awake;
  let place = 0;
  let least = ranks[0] as number;
  for (let index = 1; index < awake.count; index++) {
    const rank = ranks[index] as number;
    if (rank > least || (rank === least && (tasks[index] as TaskRun).index > (tasks[place] as TaskRun).index))
      continue;
    place = index;
    least = rank;
  }
  const last = --awake.count;
  const best = tasks[place] as TaskRun;
  tasks[place] = tasks[last] as TaskRun;
  ranks[place] = ranks[last] as number;
  tasks[last] = best;
  ranks[last] = least;
  return best;
}

/** A mend is to come, or the task cannot be placed any more: either way the bench is looked at again at once. */
function giveUpWindow(run: BenchRun, task: TaskRun, choice: Choice): void {
  const { missed } = choice.trial;
  choice.next = 0;
  if (missed === null || !beginMend(run, missed)) run.candidates.splice(run.candidates.indexOf(task), 1);
}

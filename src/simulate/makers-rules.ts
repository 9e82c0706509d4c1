import { beginMend } from "../plan/begin-mend.ts";
import { type BenchRun, beginRun, enterSession, findLatest, type TaskRun } from "../plan/bench-run.ts";
import { openingAfter } from "../plan/lag.ts";
import { placeTask } from "../plan/place-task.ts";
import type { Visit } from "../plan/plan.ts";
import { prepareDispatch } from "../plan/prepare-dispatch.ts";
import type { Problem } from "../plan/problem.ts";
import { emptyTrial, tryTask } from "../plan/try-task.ts";
import type { Minutes } from "../time/instant.ts";
import type { Policy } from "./play-forward.ts";

/** What comes first, least first; of equals the task with the lower number. */
export type Rank = (task: TaskRun, run: BenchRun, t: Minutes) => number;

/** Piece by piece, in the order they were tagged. */
export const oldestFirst: Rank = ({ task }) => task.piece;

/** The newest piece first, so a new one before all others. */
export const newestFirst: Rank = ({ task }) => -task.piece;

/** What became free to work last; new pieces, for which no timer rang, after all others. */
export const lastRungFirst: Rank = ({ task, piece }, { tasks }) => {
  if (!piece.begun) return Number.POSITIVE_INFINITY;
  let rang = task.release ?? 0;
  for (const { on, windows } of task.waits) {
    rang = Math.max(rang, openingAfter(windows[0]?.opens ?? 0, tasks[on]?.end ?? 0));
  }
  return -rang;
};

const noWindow = 1e9;

/** What shuts first; what never shuts, oldest first after it. */
export const shutsFirst: Rank = (task, run, t) => {
  if (task.latest < t) findLatest(run, task, t);
  return Number.isFinite(task.latest) ? task.latest : noWindow + task.task.piece;
};

/**
 * A maker who plans nothing: whenever hands are free, the first by `rank` of all that can be begun is begun. Bench
 * hours, windows with their preparation, set-ups, keep-aparts, hooks and the limit on how many are out hold as in any
 * plan: only the choice is the rule's.
 */
export function byRule(rank: Rank): Policy {
  return ({ problem }) => firstAct(problem, rank);
}

/** Only one piece is ever out. */
export function oneAtATime(): Policy {
  return ({ problem }) => firstAct({ ...problem, mostOut: 1 }, oldestFirst);
}

function firstAct(problem: Problem, rank: Rank): readonly Visit[] | null {
  const run = beginRun(prepareDispatch(problem), null);
  const trial = emptyTrial();
  for (const task of run.tasks) {
    if (task.task.running) placeTask(run, task, 0, { ...emptyTrial(), end: task.rest });
  }
  const inHand = run.visits.length;
  for (let t = 0; ; ) {
    t = enterSession(run, Math.max(t, Math.min(...run.hands)));
    if (t >= problem.horizon || run.candidates.length === 0) return null;
    let next = Number.POSITIVE_INFINITY;
    for (const task of byRank(run, rank, t)) {
      const ready = tryTask(run, task, t, trial);
      if (trial.missed !== null) {
        if (!beginMend(run, trial.missed)) run.candidates.splice(run.candidates.indexOf(task), 1);
        next = t;
        break;
      }
      if (ready <= t) {
        placeTask(run, task, t, trial);
        return run.visits.slice(inHand);
      }
      next = Math.min(next, ready);
    }
    for (const { wake } of run.candidates) if (wake > t) next = Math.min(next, wake);
    t = next;
  }
}

function byRank(run: BenchRun, rank: Rank, t: Minutes): TaskRun[] {
  const awake = run.candidates.filter(({ wake }) => wake <= t);
  const ranks = new Map(awake.map((task) => [task, rank(task, run, t)]));
  return awake.sort((a, b) => (ranks.get(a) ?? 0) - (ranks.get(b) ?? 0) || a.index - b.index);
}

import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import type { BenchRun, TaskRun } from "./bench-run.ts";
import { firstMeeting, missedBy, type Seeking } from "./first-meeting.ts";
import { openingAfter, shutAfter } from "./lag.ts";
import { type PlanWindow, type Problem, SHORTEST_PART, type Task } from "./problem.ts";
import type { Trial } from "./try-task.ts";

/**
 * A coat after which the next must follow in a window, or only a mend helps, is not laid when the bench is shut, or
 * the air unfit for it, for the whole of that window.
 *
 * @returns `t` when every such window can be met, else the first minute at which the coat may be laid for it
 */
export function windowsAhead(run: BenchRun, task: TaskRun, t: Minutes, trial: Trial): Minutes {
  let earliest = t;
  if (trial.left > 0) return t;
  const { problem } = run.prepared;
  for (const { wait, follower } of task.prepared.strict) {
    let shift = Number.POSITIVE_INFINITY;
    for (const window of wait.windows) {
      shift = Math.min(shift, shiftToMeet(problem, window, follower, trial.end));
    }
    earliest = Math.max(earliest, t + shift);
  }
  return earliest;
}

/** How many minutes later the coat must end for its follower to meet this window; 0: it does so now. */
function shiftToMeet(problem: Problem, window: PlanWindow, follower: Task, end: Minutes): Minutes {
  const seeking = seekingOf(problem, window, follower);
  const shuts = shutAfter(window.shuts, end);
  const start = firstMeeting(problem.sessions, openingAfter(window.opens, end), shuts, seeking);
  return start === Number.POSITIVE_INFINITY ? missedBy(problem.sessions, shuts, seeking) : 0;
}

/** The bench time a task needs to begin in a window: preparation and set-up before it, putting away after it. */
export function seekingOf(problem: Problem, window: PlanWindow, task: Task): Seeking {
  const setUp = task.setUp === null ? null : at(problem.setUps, task.setUp);
  const { preparation } = window;
  const hands = task.mayStop ? Math.min(task.minutes, SHORTEST_PART) : task.minutes;
  return {
    lead: (setUp?.minutes ?? 0) + (preparation === null ? 0 : preparation.minutes + preparation.settles),
    need: hands + (setUp?.putAway ?? 0),
    hands,
    unfit: task.unfit ?? [],
  };
}

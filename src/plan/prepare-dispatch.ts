import type { Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { givenOff } from "./given-off.ts";
import { listOf } from "./list-of.ts";
import { type Gives, LOOK, type Problem, type Task, type Wait } from "./problem.ts";
import { sortByAir } from "./sort-by-air.ts";

/** What dispatching needs of a problem and never changes: made once, used for every run over the same problem. */
export interface Prepared {
  readonly problem: Problem;
  readonly tasks: readonly PreparedTask[];
  /** By emission: which others must keep apart from it. */
  readonly apart: readonly (readonly boolean[])[];
  /** By what tasks do to the air: whether the first, once done, keeps the second waiting for long. */
  readonly holdsOff: readonly (readonly boolean[])[];
}

export interface PreparedTask {
  /** Tasks that wait for it. */
  readonly followers: readonly number[];
  /** Hands-on and waits from its start to the end of its piece, closed hours not counted. */
  readonly tail: Minutes;
  /** Its longest look after its end, with the look itself; 0: none. */
  readonly watched: Minutes;
  /** No session is long enough for it. */
  readonly tooLong: boolean;
  /** What it and its set-up put into the room, of that which something must keep apart from. */
  readonly gives: readonly Gives[];
  /** What it does to the air: the same number for tasks that give off the same; its place in `holdsOff`. */
  readonly kind: number;
  /** A window after it that shuts for good, leaving only a mend (or nothing), with the task that has it. */
  readonly strict: readonly { readonly wait: Wait; readonly follower: Task }[];
}

/**
 * Reads a problem once for all runs over it.
 *
 * @throws RangeError when a number in the problem names nothing
 */
export function prepareDispatch(problem: Problem): Prepared {
  const { tasks } = problem;
  const followers = followersOf(tasks);
  const tails = measureTails(tasks, followers);
  const longest = problem.sessions.reduce(
    (most, session) => Math.max(most, session.closes - session.opens),
    0,
  );
  const apart = spreadApart(problem);
  const gives = listOf(tasks, (task) => givenOff(problem, task, (what) => apart[what] !== undefined));
  const { kinds, holdsOff } = sortByAir(gives, apart);
  return {
    problem,
    tasks: listOf(tasks, (task, index) => ({
      followers: at(followers, index),
      tail: at(tails, index),
      watched: task.looks.reduce((last, look) => Math.max(last, look + LOOK), 0),
      tooLong: !task.mayStop && !task.running && leastRoom(problem, task) > longest,
      gives: at(gives, index),
      kind: at(kinds, index),
      strict: strictWaits(tasks, index, at(followers, index)),
    })),
    apart,
    holdsOff,
  };
}

/** Shortest stretch of bench time in which the task can be done with its set-up made, and put away after. */
function leastRoom(problem: Problem, task: Task): Minutes {
  if (task.setUp === null) return task.minutes;
  const { minutes, putAway } = at(problem.setUps, task.setUp);
  return task.minutes + minutes + putAway;
}

/** By task: those that wait for it. */
function followersOf(tasks: readonly Task[]): number[][] {
  const followers = listOf(tasks, (): number[] => []);
  for (let index = 0; index < tasks.length; index++) {
    for (const { on } of at(tasks, index).waits) at(followers, on).push(index);
  }
  return followers;
}

/** Tasks stand after those they wait for, so one sweep from the last is enough. */
function measureTails(tasks: readonly Task[], followers: readonly (readonly number[])[]): Minutes[] {
  const tails = tasks.map((task) => (task.ended === null ? task.minutes : 0));
  for (let index = tasks.length - 1; index >= 0; index--) {
    let longest = 0;
    for (const next of at(followers, index)) {
      longest = Math.max(longest, leastWait(waitOn(at(tasks, next), index)) + at(tails, next));
    }
    tails[index] = at(tails, index) + longest;
  }
  return tails;
}

function waitOn(task: Task, on: number): Wait | undefined {
  return task.waits.find((wait) => wait.on === on);
}

/** The wait as far as it is known beforehand; one that depends on the air counts as none. */
function leastWait(wait: Wait | undefined): Minutes {
  const opens = wait?.windows[0]?.opens;
  return typeof opens === "number" ? opens : 0;
}

function strictWaits(tasks: readonly Task[], index: number, followers: readonly number[]) {
  const strict: { wait: Wait; follower: Task }[] = [];
  for (const next of followers) {
    const follower = at(tasks, next);
    const wait = waitOn(follower, index);
    if (wait !== undefined && wait.windows.at(-1)?.shuts !== null) strict.push({ wait, follower });
  }
  return strict;
}

function spreadApart(problem: Problem): boolean[][] {
  const rows: boolean[][] = [];
  for (const [one, other] of problem.apart) {
    rows[one] ??= [];
    rows[other] ??= [];
    at(rows, one)[other] = true;
    at(rows, other)[one] = true;
  }
  return rows;
}

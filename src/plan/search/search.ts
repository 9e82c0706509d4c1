import type { Minutes } from "../../time/instant.ts";
import { dispatch } from "../dispatch.ts";
import type { Plan } from "../plan.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import type { Problem } from "../problem.ts";
import { type Score, scorePlan } from "../score.ts";

/** The best plan known so far. */
export interface Found {
  readonly plan: Plan;
  readonly score: Score;
  /** No plan costs less. */
  readonly bound: number;
  /** The plan costs as little as any can. */
  readonly proven: boolean;
  /** How many rounds have been searched. */
  readonly rounds: number;
}

/** A search that can be stopped after any round, and gone on with. */
export interface Search {
  /** Runs so many rounds more; true: something better was found. */
  go(rounds: number): boolean;
  readonly found: Found;
}

/**
 * Begins to search for the best plan. The same problem, seed, warm plan and rounds give the same answer.
 *
 * @param options.warm a plan of an earlier moment or a near problem, to start from
 */
export function beginSearch(
  problem: Problem,
  options: { readonly seed: number; readonly warm: Plan | null },
): Search {
  void options;
  const plan = dispatch(prepareDispatch(problem));
  let rounds = 0;
  return {
    go(more) {
      rounds += more;
      return false;
    },
    get found() {
      return { plan, score: scorePlan(problem, plan), bound: 0, proven: false, rounds };
    },
  };
}

/** The same problem with these tasks not begun before a minute: what leaving them until then means. */
export function leaveUntil(problem: Problem, tasks: readonly number[], minute: Minutes): Problem {
  const left = new Set(tasks);
  return {
    ...problem,
    tasks: problem.tasks.map((task, index) =>
      left.has(index) && task.release !== null && !task.running
        ? { ...task, release: Math.max(task.release, minute) }
        : task,
    ),
  };
}

import type { Lag, PlanWindow, Problem, Wait } from "../plan/problem.ts";

/**
 * A problem in which coats still to be laid take longer to open than their sheets say, by a factor. A plan made by the
 * bare sheet lays a coat that opens after a day late in one evening and counts on it late in the next: half the time it
 * is not ready, and the piece loses a day. Shuts stay as they are; so do waits that run already, and those of air that
 * changes.
 *
 * @example a coat of 24 h stretched by 1.1 opens after 26 h 24
 */
export function stretchWaits(problem: Problem, by: number): Problem {
  if (by === 1) return problem;
  const { tasks } = problem;
  const known = new Map<readonly PlanWindow[], readonly PlanWindow[]>();
  const stretch = (wait: Wait): Wait => {
    if (tasks[wait.on]?.ended !== null) return wait;
    let windows = known.get(wait.windows);
    if (windows === undefined) {
      windows = wait.windows.map((window) => stretchWindow(window, by));
      known.set(wait.windows, windows);
    }
    return { ...wait, windows };
  };
  return {
    ...problem,
    tasks: tasks.map((task) => (task.ended === null ? { ...task, waits: task.waits.map(stretch) } : task)),
  };
}

/** A window never opens after it has shut. */
function stretchWindow(window: PlanWindow, by: number): PlanWindow {
  const { opens, shuts } = window;
  if (typeof opens !== "number") return window;
  return { ...window, opens: earlier(Math.round(opens * by), shuts) };
}

function earlier(opens: number, shuts: Lag | null): number {
  return typeof shuts === "number" ? Math.min(opens, shuts) : opens;
}

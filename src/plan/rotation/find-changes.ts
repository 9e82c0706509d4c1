import type { Minutes } from "../../time/instant.ts";
import type { Problem } from "../problem.ts";
import type { Circle } from "./circle.ts";
import type { PaceSolver } from "./pace-solver.ts";
import type { Change, Impossible, Pace, Timetable } from "./rotation-answer.ts";

/** What "longer open" means, and by how much a cure is shortened to see what it gives. */
const LONGER: Minutes = 60;
const SHORTER = 0.75;
/** Shorter waits than this are not worth a faster coat. */
const SHORTEST_CURE: Minutes = 60;

/**
 * What one thing otherwise would give at the same pace, each solved exactly: what shortens it most limits it. Where the
 * pace cannot be kept at all: what would make it possible.
 */
export function findChanges(solver: PaceSolver, pace: Pace, now: Timetable | Impossible): Change[] {
  const period = pace.days * 1_440;
  const changes: Change[] = [];
  const before = now.is === "timetable" ? now.span : Number.POSITIVE_INFINITY;
  const attempt = (
    what: Change["what"],
    change: (problem: Problem) => Problem,
    bend: (circle: Circle) => Circle = (circle) => circle,
  ): void => {
    const span = solver.spanIf(pace, change, bend);
    if (span !== null && span < before) changes.push({ what, span, out: Math.ceil(span / period) });
  };
  const same = (problem: Problem): Problem => problem;
  const { problem, pieces } = solver.problem(1);
  attempt({ kind: "hours", minutes: LONGER }, same, (circle) => openLonger(circle));
  attempt({ kind: "hands" }, (one) => ({ ...one, hands: one.hands + 1 }));
  attempt({ kind: "windows" }, same, withoutShuts);
  attempt({ kind: "keep apart" }, (one) => ({ ...one, apart: [] }));
  for (const [place, { name }] of problem.places.entries()) {
    attempt({ kind: "hook", place: name }, (one) => ({ ...one, places: oneHookMore(one.places, place) }));
  }
  for (const [task, { minutes, step }] of longWaits(problem, pieces[0]?.tasks ?? [])) {
    attempt({ kind: "cure", step, minutes }, (one) => shortenWait(one, task));
  }
  return changes.sort((one, other) => one.span - other.span);
}

/** Every session closes later, at the latest when the next opens. */
function openLonger(circle: Circle): Circle {
  const sessions = circle.sessions.map(({ opens, closes }, index) => {
    const next = circle.sessions[index + 1]?.opens ?? circle.period;
    return { opens, closes: Math.min(closes + LONGER, next) };
  });
  return { ...circle, sessions };
}

/** A window once open stays open. */
function withoutShuts(circle: Circle): Circle {
  const lags = circle.lags.map(({ from, to, least, most }) => {
    // A look comes at its minute whatever windows do.
    return { from, to, least, most: most === least ? most : null };
  });
  return { ...circle, lags };
}

function oneHookMore(places: Problem["places"], place: number): Problem["places"] {
  return places.map((one, index) => (index === place ? { ...one, hooks: one.hooks + 1 } : one));
}

/** By task with a coat: its longest wait, where that is worth shortening. */
function longWaits(
  { tasks }: Problem,
  made: readonly { readonly task: number; readonly step: string; readonly coat: string | null }[],
): Map<number, { readonly minutes: Minutes; readonly step: string }> {
  const long = new Map<number, { minutes: Minutes; step: string }>();
  for (const { waits } of tasks) {
    for (const { on, windows } of waits) {
      const opens = windows[0]?.opens ?? 0;
      const coat = made.find(({ task }) => task === on);
      if (typeof opens !== "number" || opens < SHORTEST_CURE || coat === undefined) continue;
      const known = long.get(on)?.minutes ?? 0;
      if (opens > known) long.set(on, { minutes: Math.round(opens * (1 - SHORTER)), step: coat.step });
    }
  }
  return long;
}

/** All that waits for a task waits a quarter less. */
function shortenWait(problem: Problem, of: number): Problem {
  const tasks = problem.tasks.map((task) => ({
    ...task,
    waits: task.waits.map((wait) => {
      if (wait.on !== of) return wait;
      const windows = wait.windows.map((window) => {
        const { opens } = window;
        return { ...window, opens: typeof opens === "number" ? Math.round(opens * SHORTER) : opens };
      });
      return { ...wait, windows };
    }),
  }));
  return { ...problem, tasks };
}

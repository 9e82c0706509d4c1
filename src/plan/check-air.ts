import type { Plan } from "./plan.ts";
import type { Problem } from "./problem.ts";

interface Emission {
  readonly what: number;
  readonly from: number;
  readonly until: number;
  /** Of the task that gives it off; null: it was there at minute 0. */
  readonly task: number | null;
  /** In the room at minute 0 or in hand then: facts, whatever they meet. */
  readonly fact: boolean;
}

/** Nothing is in the room together with what must keep apart from it. A task keeps its own order within itself. */
export function checkAir(problem: Problem, plan: Plan): string[] {
  const all = [
    ...problem.air.map(({ what, until }) => ({ what, from: 0, until, task: null, fact: true })),
    ...given(problem, plan),
  ];
  const wrong: string[] = [];
  for (const [one, other] of problem.apart) {
    for (const a of all) {
      if (a.what !== one) continue;
      for (const b of all) {
        if (b.what !== other || a.task === b.task || (a.fact && b.fact)) continue;
        if (a.from >= b.until || b.from >= a.until || a.from >= a.until || b.from >= b.until) continue;
        wrong.push(
          `emission ${one} of task ${a.task} meets ${other} of task ${b.task} at ${Math.max(a.from, b.from)}`,
        );
      }
    }
  }
  return wrong;
}

function given(problem: Problem, { visits }: Plan): Emission[] {
  return visits.flatMap((visit) => {
    const { task: index, part, start, end } = visit;
    const task = problem.tasks[index];
    if (task === undefined) return [];
    const fact = task.running;
    if (part === "preparation") {
      const preparation = task.waits
        .flatMap(({ windows }) => windows.map((window) => window.preparation))
        .find((asked) => asked !== null && asked.minutes === end - start);
      return (preparation?.gives ?? []).map(({ what, lasts }) => ({
        what,
        from: start,
        until: end + lasts,
        task: index,
        fact,
      }));
    }
    const own = task.gives.map(({ what, lasts, fromSetUp }) => ({
      what,
      from: fromSetUp ? start - visit.setUp : start,
      until: end + lasts,
      task: index,
      fact,
    }));
    const setUp = task.setUp === null ? undefined : problem.setUps[task.setUp];
    const from = visit.setUp > 0 ? start - visit.setUp : stoodSince(problem, visits, index, start);
    const standing = (setUp?.gives ?? []).map((what) => ({
      what,
      from,
      until: end + (setUp?.putAway ?? 0),
      task: index,
      fact,
    }));
    return [...own, ...standing];
  });
}

/** Since when a set-up that is used again has stood there giving off: its use before, or now (one made before minute 0). */
function stoodSince(problem: Problem, visits: Plan["visits"], index: number, start: number): number {
  const { station } = problem.tasks[index] ?? { station: null };
  const before = visits
    .filter((visit) => visit.part !== "preparation" && visit.start < start)
    .filter((visit) => problem.tasks[visit.task]?.station === station && station !== null)
    .map(({ end }) => end);
  return before.length === 0 ? start : Math.min(start, Math.max(...before));
}

import { at } from "../at.ts";
import { type Chance, lognormal } from "../chance.ts";
import type { Lag, PlanWindow, Problem, Task, Wait } from "../problem.ts";

/** By how much work goes off, as coefficients of variation (0.25 is 25 %): common practice, no source. */
const SPREAD = { hands: 0.25, wait: 0.15 };

/**
 * The same shop as it might turn out: hands-on of each task, and how each wait still running goes, by chance. A coat is
 * first touched when its sheet says, so a wait that is over sooner than that opens no sooner; what its windows shut at
 * goes by how it went. Air that changes (waits told as tables) is left as it is.
 */
export function underLuck(problem: Problem, chance: Chance): Problem {
  const hands = problem.tasks.map(() => lognormal(chance, SPREAD.hands));
  const waits = problem.tasks.map(() => lognormal(chance, SPREAD.wait));
  const tasks = problem.tasks.map((task, index): Task => {
    if (task.ended !== null) return task;
    const minutes = Math.max(1, Math.round(task.minutes * at(hands, index)));
    if (task.running) return { ...task, minutes };
    return {
      ...task,
      minutes,
      release: releaseUnderLuck(problem, task, at(waits, index)),
      waits: task.waits.map((wait) => waitUnderLuck(wait, at(problem.tasks, wait.on), at(waits, wait.on))),
    };
  });
  return { ...problem, tasks };
}

/** The release of a piece in work is what is left of a wait. */
function releaseUnderLuck({ pieces }: Problem, { piece, release }: Task, factor: number): Task["release"] {
  if (release === null || release <= 0 || !at(pieces, piece).begun) return release;
  return Math.round(release * Math.max(1, factor));
}

function waitUnderLuck(wait: Wait, on: Task, factor: number): Wait {
  let open = 0;
  const windows = wait.windows.map(({ opens, shuts, preparation }, index): PlanWindow => {
    const from = Math.max(open, lagUnderLuck(opens, on, index === 0 ? Math.max(1, factor) : factor));
    const to = shuts === null ? null : Math.max(from, lagUnderLuck(shuts, on, factor));
    open = (to ?? from) + 1;
    return {
      opens: typeof opens === "number" ? from : opens,
      shuts: typeof shuts === "number" ? to : shuts,
      preparation,
    };
  });
  return { ...wait, windows };
}

/** Of a wait that runs already, only what is left of it goes by chance. Tables count as 0: they stay as they are. */
function lagUnderLuck(lag: Lag, { ended }: Task, factor: number): number {
  if (typeof lag !== "number") return 0;
  const gone = ended === null ? 0 : Math.min(lag, -ended);
  return gone + Math.round((lag - gone) * factor);
}

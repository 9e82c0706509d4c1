import { completions } from "./completions.ts";
import type { Plan, Visit } from "./plan.ts";
import type { Lag, Preparing, Problem, Wait } from "./problem.ts";

/** Every task begins inside a window of each wait, after the preparation that window asks for; mends have a reason. */
export function checkWindows(problem: Problem, { visits }: Plan): string[] {
  return problem.tasks.flatMap((task, index) => {
    const own = visits.filter((visit) => visit.task === index);
    const wrong = own.filter(({ part }) => part === "mend").flatMap((visit) => checkMend(problem, visit));
    const step = own.filter(({ part }) => part === "step").sort((a, b) => a.start - b.start)[0];
    const begins = own.filter((visit) => visit === step || visit.part === "again");
    const preparations = own.filter(({ part }) => part === "preparation");
    for (const begin of task.running ? [] : begins) {
      for (const wait of task.waits) {
        const ends = completions(problem, visits, wait.on).filter((end) => end <= begin.start);
        const end = Math.max(...ends, problem.tasks[wait.on]?.ended ?? -Infinity);
        const lacks =
          end === -Infinity ? "work before it" : findWindow(problem, wait, end, begin, preparations);
        if (lacks !== null) wrong.push(`task ${index} begins at ${begin.start} without ${lacks}`);
      }
    }
    if (preparations.length > 0) wrong.push(`task ${index} is prepared though no window asks for it`);
    return wrong;
  });
}

/** Takes the preparation used off the list. @returns what is missing; null: nothing */
function findWindow(
  problem: Problem,
  wait: Wait,
  end: number,
  first: Visit,
  preparations: Visit[],
): string | null {
  for (const window of wait.windows) {
    const opens = moment(window.opens, end, Math.ceil);
    const shuts = window.shuts === null ? Infinity : moment(window.shuts, end, Math.floor);
    if (first.start < opens || first.start > shuts) continue;
    if (window.preparation === null) return null;
    const done = preparations.findIndex((visit) =>
      prepares(problem, visit, window.preparation as Preparing, opens, first),
    );
    if (done < 0) return "its preparation";
    preparations.splice(done, 1);
    return null;
  }
  return `an open window after task ${wait.on}`;
}

function prepares(problem: Problem, visit: Visit, asked: Preparing, opens: number, first: Visit): boolean {
  const session = problem.sessions.find(({ closes }) => closes > visit.start);
  return (
    visit.end - visit.start === asked.minutes &&
    visit.start >= opens &&
    visit.end + asked.settles <= first.start - first.setUp &&
    first.end <= (session?.closes ?? -Infinity)
  );
}

function moment(lag: Lag, end: number, round: (entry: number) => number): number {
  return typeof lag === "number" ? end + lag : (lag.reached[Math.max(0, round(end / lag.every))] ?? Infinity);
}

/** A mend takes the levelling and the whole task again. */
function checkMend(problem: Problem, visit: Visit): string[] {
  const minutes = problem.tasks[visit.task]?.minutes ?? 0;
  const asked = problem.tasks.some((task) =>
    task.waits.some(
      ({ on, mend }) => on === visit.task && mend !== null && mend + minutes === visit.end - visit.start,
    ),
  );
  return asked ? [] : [`the mend of task ${visit.task} at ${visit.start} was not asked for`];
}

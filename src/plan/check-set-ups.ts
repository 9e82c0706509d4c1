import type { Plan, Visit } from "./plan.ts";
import type { Problem } from "./problem.ts";

/** A use of a station's set-up, in order of time: made ready at `ready`, good for a start at `from` .. `end`. */
interface Use {
  readonly setUp: number;
  readonly ready: number;
  readonly end: number;
  readonly served: number;
}

/** What every task needs stands at its station when it begins, made directly before it or kept from an earlier use. */
export function checkSetUps(problem: Problem, plan: Plan): string[] {
  return problem.stations.flatMap((station, index) => {
    const uses = plan.visits
      .filter((visit) => visit.part !== "preparation" && problem.tasks[visit.task]?.station === index)
      .filter((visit) => (problem.tasks[visit.task]?.setUp ?? null) !== null)
      .sort((a, b) => a.start - b.start);
    const { standing } = station;
    let any = standing === "any";
    let last: Use | null =
      standing === null || standing === "any"
        ? null
        : {
            setUp: standing.setUp,
            ready: standing.ready,
            end: standing.lastUsed ?? standing.ready,
            served: standing.served,
          };
    const wrong: string[] = [];
    for (const visit of uses) {
      const setUp = problem.tasks[visit.task]?.setUp ?? -1;
      const running = problem.tasks[visit.task]?.running === true;
      const asked = problem.setUps[setUp]?.minutes ?? 0;
      if (visit.setUp > 0 && visit.setUp !== asked)
        wrong.push(`task ${visit.task} is set up ${visit.setUp} min`);
      if (visit.setUp === 0 && asked > 0 && !any && !running && !keeps(problem, last, setUp, visit)) {
        wrong.push(`what task ${visit.task} needs at ${visit.start} does not stand`);
      }
      const kept: Use | null = visit.setUp > 0 || any || last?.setUp !== setUp ? null : last;
      last = {
        setUp,
        ready: kept?.ready ?? visit.start,
        end: visit.end,
        served: (kept?.served ?? 0) + 1,
      };
      any = false;
    }
    return wrong;
  });
}

function keeps(problem: Problem, last: Use | null, setUp: number, visit: Visit): boolean {
  const shared = problem.setUps[setUp];
  if (last === null || last.setUp !== setUp || shared === undefined || visit.start < last.ready) return false;
  const shutBetween = problem.sessions.some(
    ({ closes }) => closes > Math.max(0, last.end) && closes <= visit.start,
  );
  if (shared.putAway > 0 && shutBetween) return false;
  const { keeps: way } = shared;
  if (way.way === "load") return true;
  if (way.way === "heat") return visit.start <= last.end + way.minutes;
  return visit.end <= last.ready + way.minutes && last.served < way.serves;
}

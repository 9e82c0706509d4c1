import { checkAir } from "./check-air.ts";
import { checkSetUps } from "./check-set-ups.ts";
import { checkWindows } from "./check-windows.ts";
import { completions } from "./completions.ts";
import type { Plan, Visit } from "./plan.ts";
import { LOOK, type Problem, SHORTEST_PART, type Task } from "./problem.ts";

/**
 * Everything about a plan that breaks the problem, each as a sentence; empty: the plan holds. It shares no code with
 * what makes plans, and reads a plan as a whole where they go from minute to minute. It takes time in the square of
 * the visits and more: for tests, and for a plan about to be shown.
 *
 * @example checkPlan(problem, plan) // ["task 3 begins at 1440 without its preparation"]
 */
export function checkPlan(problem: Problem, plan: Plan): string[] {
  return [
    ...checkWork(problem, plan),
    ...checkSessions(problem, plan),
    ...checkHands(problem, plan),
    ...checkLooks(problem, plan),
    ...checkPieces(problem, plan),
    ...checkHooks(problem, plan),
    ...checkWindows(problem, plan),
    ...checkSetUps(problem, plan),
    ...checkAir(problem, plan),
  ];
}

/** Every task is worked whole and once, or is named as not placed. */
function checkWork({ tasks, pieces }: Problem, { visits, unplaced }: Plan): string[] {
  const byTask = tasks.map((): Visit[] => []);
  for (const visit of visits) byTask[visit.task]?.push(visit);
  return tasks.flatMap((task, index) => {
    const own = byTask[index] ?? [];
    const steps = own.filter(({ part }) => part === "step");
    const worked = steps.reduce((sum, { start, end }) => sum + end - start, 0);
    if (task.ended !== null) return steps.length > 0 ? [`task ${index} is done and is worked again`] : [];
    const wrong: string[] = [];
    const over = own.some(({ part }) => part === "again");
    if (worked !== task.minutes && !unplaced.includes(index) && !over) {
      wrong.push(`task ${index} is worked ${worked} of ${task.minutes} min`);
    }
    if (steps.length > 1 && !task.mayStop) wrong.push(`task ${index} may not be split`);
    if (steps.length > 1 && steps.some(({ start, end }) => end - start < SHORTEST_PART)) {
      wrong.push(`task ${index} has a part under ${SHORTEST_PART} min`);
    }
    const release = Math.max(task.release ?? Infinity, pieces[task.piece]?.release ?? Infinity);
    for (const visit of task.running ? [] : own) {
      if (handsFrom(visit) < release) wrong.push(`task ${index} is worked before minute ${release}`);
    }
    return [...wrong, ...unfitWork(task, own)];
  });
}

/** Hands-on in air that is unfit for it, minute by minute, but for what was in hand before. */
function unfitWork({ unfit = [], running }: Task, own: readonly Visit[]): string[] {
  if (unfit.length === 0 || running) return [];
  return own.flatMap(({ task, part, start, end }) => {
    if (part === "preparation") return [];
    const minutes = Array.from({ length: end - start }, (_, minute) => start + minute);
    const bad = minutes.find((minute) => unfit.some(([from, until]) => minute >= from && minute < until));
    return bad === undefined ? [] : [`task ${task} is worked in unfit air at ${bad}`];
  });
}

/** All hands-on time lies in bench hours, and leaves time to put away what was set up. */
function checkSessions(problem: Problem, { visits }: Plan): string[] {
  const wrong: string[] = [];
  const toPutAway = (setUp: number | null | undefined) => problem.setUps[setUp ?? -1]?.putAway ?? 0;
  const owing = visits
    .map((visit) => ({ visit, minutes: toPutAway(problem.tasks[visit.task]?.setUp) }))
    .filter(({ visit, minutes }) => visit.part !== "preparation" && minutes > 0);
  for (const visit of visits) {
    if (problem.tasks[visit.task]?.running === true) continue;
    const session = problem.sessions.find(({ closes }) => closes > visit.start);
    if (session === undefined || visit.start - visit.setUp < session.opens || visit.end > session.closes) {
      wrong.push(`task ${visit.task} is worked outside bench hours at ${visit.start}`);
      continue;
    }
    const isFirst = problem.sessions.find(({ closes }) => closes > 0) === session;
    const used = owing.filter(
      ({ visit: other }) =>
        (other === visit || other.end <= handsFrom(visit)) && other.start >= session.opens,
    );
    const owed = problem.stations.map(({ standing }, index) => {
      const before = isFirst && standing !== null && standing !== "any" ? toPutAway(standing.setUp) : 0;
      const own = used.filter(({ visit: { task } }) => problem.tasks[task]?.station === index);
      return Math.max(before, ...own.map(({ minutes }) => minutes));
    });
    const putAway = visit.part === "preparation" ? 0 : owed.reduce((sum, minutes) => sum + minutes, 0);
    if (visit.end + putAway > session.closes) wrong.push(`no time to put away after task ${visit.task}`);
  }
  return wrong;
}

const handsFrom = (visit: Visit): number => visit.start - visit.setUp;

const overlap = (visit: Visit, from: number, until: number): boolean =>
  handsFrom(visit) < until && visit.end > from;

/** Never more at once than there are pairs of hands, one at a station, and one on a piece. */
function checkHands(problem: Problem, { visits }: Plan): string[] {
  const wrong: string[] = [];
  for (const visit of visits) {
    const from = handsFrom(visit);
    const together = visits.filter((other) => overlap(other, from, from + 1));
    if (together.length > problem.hands) wrong.push(`${together.length} works at once at ${from}`);
    const task = problem.tasks[visit.task];
    for (const other of together) {
      if (other === visit) continue;
      const its = problem.tasks[other.task];
      if (its?.piece === task?.piece) wrong.push(`piece ${task?.piece} is worked twice at ${from}`);
      // Two in hand already at one station are a fact, not a plan.
      if (task?.station !== null && its?.station === task?.station && !(its?.running && task?.running)) {
        wrong.push(`station ${task?.station} is used twice at ${from}`);
      }
    }
  }
  return wrong;
}

/** Every look falls in the session of its coat, at a minute with a free pair of hands. */
function checkLooks(problem: Problem, { visits }: Plan): string[] {
  const wrong: string[] = [];
  const looks = [...problem.looks];
  for (const [index, task] of problem.tasks.entries()) {
    for (const end of task.looks.length === 0 ? [] : completions(problem, visits, index)) {
      for (const look of task.looks) {
        looks.push(end + look);
        const session = problem.sessions.find(({ closes }) => closes >= end);
        if (!task.running && (session === undefined || end + look + LOOK > session.closes)) {
          wrong.push(`the look ${look} min after task ${index} falls outside bench hours`);
        }
      }
    }
  }
  for (const look of looks) {
    const busy = visits.filter((visit) => overlap(visit, look, look + LOOK)).length;
    if (look >= 0 && busy >= problem.hands) wrong.push(`no free hands for the look at ${look}`);
  }
  return wrong;
}

/** Finishes are as the visits say, and the limit on how many are out holds. */
function checkPieces(problem: Problem, { visits, unplaced, finish }: Plan): string[] {
  const wrong: string[] = [];
  const first = problem.pieces.map((piece, index) => {
    const own = visits.filter((visit) => problem.tasks[visit.task]?.piece === index);
    const left = unplaced.some((task) => problem.tasks[task]?.piece === index);
    const ends = left || own.length === 0 ? null : Math.max(...own.map(({ end }) => end)) + piece.cure;
    if ((finish[index] ?? null) !== ends)
      wrong.push(`piece ${index} is finished at ${ends}, not ${finish[index]}`);
    return piece.begun ? -1 : Math.min(Infinity, ...own.map(handsFrom));
  });
  if (problem.mostOut === null) return wrong;
  for (const [index, piece] of problem.pieces.entries()) {
    const from = first[index] ?? Infinity;
    if (piece.begun || !piece.underLimit || from === Infinity) continue;
    const out = first.filter((start, other) => start < from && (finish[other] ?? Infinity) > from).length;
    if (out >= problem.mostOut) wrong.push(`piece ${index} is begun while ${out} are out`);
  }
  return wrong;
}

/** A piece on a hook keeps it until its stage, or until it is worked again; no place ever has too few hooks. */
function checkHooks(problem: Problem, { visits }: Plan): string[] {
  const hangs = problem.pieces.flatMap((piece, index) => {
    const own = visits.filter((visit) => problem.tasks[visit.task]?.piece === index);
    const until = (from: number, shut: number) =>
      Math.min(shut, ...own.map(handsFrom).filter((start) => start >= from));
    const held =
      piece.hook === null ? [] : [{ place: piece.hook.place, from: 0, until: until(0, piece.hook.until) }];
    const hung = [...new Set(own.map(({ task }) => task))].flatMap((number) => {
      const hook = problem.tasks[number]?.hook ?? null;
      if (hook === null) return [];
      return completions(problem, own, number).map((end) => {
        const { until: lag } = hook;
        const shut =
          typeof lag === "number" ? end + lag : (lag.reached[Math.ceil(end / lag.every)] ?? Infinity);
        return { place: hook.place, from: end, until: hook.stays === true ? shut : until(end, shut) };
      });
    });
    return [...held, ...hung];
  });
  return hangs.flatMap(({ place, from, until }) => {
    if (from === 0 || until <= from) return [];
    const taken = hangs.filter(
      (hang) => hang.place === place && hang.from <= from && hang.until > from,
    ).length;
    return taken > (problem.places[place]?.hooks ?? 0) ? [`${taken} hang at place ${place} at ${from}`] : [];
  });
}

import { SearchByConflict } from "./conflict/search-by-conflict.ts";
import type { Project, ProjectAnswer } from "./project.ts";
import { findFirstSchedule } from "./projects/first-schedule.ts";
import { makeProjectModel, type ProjectModel } from "./projects/project-model.ts";
import { findSequence, type Sequence } from "./projects/sequence.ts";

const NONE: ProjectAnswer = { status: "infeasible", makespan: null, starts: null, bound: null, nodes: 0 };

/** Clashes of a first run; later runs have more patience by half. */
const PATIENCE = 200;

/**
 * Finds a schedule of the least makespan and proves that there is none shorter, or proves that there is none at all.
 *
 * Two questions take turns, each with growing patience: is there a schedule as short as the bound (destructive
 * improvement: Klein and Scholl, European Journal of Operational Research 112, 1999)? Is there one shorter than the
 * best found? What one learns from its clashes serves the other.
 *
 * @param isOver asked before each decision with their count; true: stop, and tell what is known
 * @returns the same for the same project and the same stop
 */
export function solveProject(project: Project, isOver: (nodes: number) => boolean): ProjectAnswer {
  const model = makeProjectModel(project);
  if (model === null) return NONE;
  const search = new SearchByConflict(model);
  const sequence = findSequence(model);
  if (!search.begin((sequence?.bound ?? 0) - model.endOffset)) return NONE;
  for (const times of firstTimes(project, model, sequence, search)) {
    if (!search.offer(valuesOf(model, times))) return answer(project, model, search, true);
  }
  let patience = PATIENCE;
  for (let lowNext = true; ; lowNext = !lowNext) {
    const end = search.run(lowNext ? search.bound : search.most, patience, isOver);
    if (end === "exhausted") return answer(project, model, search, true);
    if (end === "stopped") return answer(project, model, search, false);
    if (end === "tired" && !lowNext) patience *= 1.5;
    // The bound has risen, or a shorter schedule is known: the same question again.
    if (end !== "tired") lowNext = !lowNext;
  }
}

/** Schedules to begin with, as times of all bodies. */
function* firstTimes(
  project: Project,
  model: ProjectModel,
  sequence: Sequence | null,
  search: SearchByConflict,
): Generator<readonly number[]> {
  if (sequence?.times && model.isDisjunctive) yield sequence.times;
  const starts = findFirstSchedule(project, model, search.bound + model.endOffset);
  if (starts === null) return;
  const { activities } = project;
  const end = Math.max(0, ...activities.map(({ duration }, at) => (starts[at] ?? 0) + duration));
  // Events after the activities are the origin and the end.
  yield model.bodies.leaders.map((event) => starts[event] ?? (event === activities.length ? 0 : end));
}

/** The values of all variables: after the times, which way round each gap is. */
function valuesOf({ gaps }: ProjectModel, times: readonly number[]): Int32Array {
  const ways = gaps.map(({ one, other, atLeast }) =>
    (times[other] as number) - (times[one] as number) >= atLeast ? 1 : 0,
  );
  return Int32Array.from([...times, ...ways]);
}

function answer(
  { activities }: Project,
  model: ProjectModel,
  search: SearchByConflict,
  proven: boolean,
): ProjectAnswer {
  const { best, nodes } = search;
  if (best === null) {
    return proven
      ? { ...NONE, nodes }
      : { ...NONE, status: "unknown", bound: search.bound + model.endOffset, nodes };
  }
  const { body, offset } = model.bodies;
  const makespan = (best[model.goal] as number) + model.endOffset;
  return {
    status: proven ? "optimal" : "feasible",
    makespan,
    starts: activities.map((_, at) => (best[body[at] as number] as number) + (offset[at] as number)),
    bound: proven ? makespan : search.bound + model.endOffset,
    nodes,
  };
}

import { SearchByConflict } from "./conflict/search-by-conflict.ts";
import type { Project, ProjectAnswer } from "./project.ts";
import { makeProjectModel, type ProjectModel } from "./projects/project-model.ts";
import { Sampler } from "./projects/sampler.ts";
import { findSequence } from "./projects/sequence.ts";

const NONE: ProjectAnswer = { status: "infeasible", makespan: null, starts: null, bound: null, nodes: 0 };

/** Clashes to one sampled schedule, and schedules sampled in one go at most: nobody can stop it meanwhile. */
const CLASHES_A_TRY = 8;
const MOST_TRIES = 60;

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
  if (sequence?.times && model.isDisjunctive && !search.offer(valuesOf(model, sequence.times))) {
    return answer(project, model, search, true);
  }
  const sampler = Sampler.of(project, model);
  let patience = PATIENCE;
  let isLow = true;
  let isStuck = true;
  for (;;) {
    if (
      isLow &&
      isStuck &&
      !sample(project, model, sampler, search, Math.min(MOST_TRIES, patience / CLASHES_A_TRY))
    ) {
      return answer(project, model, search, true);
    }
    const end = search.run(isLow ? search.bound : search.most, patience, isOver);
    if (end === "exhausted" || end === "stopped") return answer(project, model, search, end === "exhausted");
    // Else the bound has risen, or a shorter schedule is known: the same question again.
    isStuck = end === "tired";
    if (!isStuck) continue;
    if (!isLow) patience *= 1.5;
    isLow = !isLow;
  }
}

/** Offers the search a schedule found by chance. @returns false when there can be none shorter */
function sample(
  { activities }: Project,
  model: ProjectModel,
  sampler: Sampler | null,
  search: SearchByConflict,
  tries: number,
): boolean {
  const starts = sampler?.improve(tries, search.bound + model.endOffset) ?? null;
  if (starts === null) return true;
  const end = Math.max(0, ...activities.map(({ duration }, at) => (starts[at] ?? 0) + duration));
  // Events after the activities are the origin and the end.
  const times = model.bodies.leaders.map((event) => starts[event] ?? (event === activities.length ? 0 : end));
  return search.offer(valuesOf(model, times));
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

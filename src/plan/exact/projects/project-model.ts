import { Arcs, type Difference } from "../conflict/arcs.ts";
import { Machine } from "../conflict/machine.ts";
import type { Model } from "../conflict/model.ts";
import { Profile } from "../conflict/profile.ts";
import { lookBackward, lookForward, type ResourceActivity } from "../conflict/resource.ts";
import type { Project } from "../project.ts";
import { type Bodies, findBodies } from "./bodies.ts";
import { findGaps, type Gap } from "./gaps.ts";
import { type LongestPaths, NO_PATH } from "./longest-paths.ts";
import { makeTemporal, type Temporal } from "./temporal.ts";

/** A project as the search reads it: the times of its bodies, the way round each gap, and what resources allow. */
export interface ProjectModel extends Model {
  readonly bodies: Bodies;
  readonly gaps: readonly Gap[];
  /** The longest paths between bodies. */
  readonly paths: LongestPaths;
  /** How long after its body's leader the latest end is. */
  readonly endOffset: number;
  /** Whether the gaps say all that resources ask. */
  readonly isDisjunctive: boolean;
}

/** @returns null when lags and resources plainly contradict each other: there is no schedule */
export function makeProjectModel(project: Project): ProjectModel | null {
  const temporal = makeTemporal(project);
  if (temporal === null || asksTooMuch(project)) return null;
  const bodies = findBodies(temporal.paths);
  const paths = pathsBetween(bodies, temporal.paths);
  const gaps = findGaps(project, bodies, paths);
  if (gaps === null) return null;
  const first = firstBounds(temporal, bodies, paths, gaps.length);
  if (first === null) return null;
  const times = bodies.leaders.length;
  const differences = [
    ...lagsBetween(paths, bodies.body[temporal.origin] as number),
    ...gaps.flatMap((gap, index) => sidesOf(gap, times + index)),
  ];
  const { machines, profiles } = rulesOf(project, bodies);
  return {
    bodies,
    gaps,
    paths,
    first,
    times,
    ways: gaps.map(({ one, other }, index) => ({ variable: times + index, one, other })),
    goal: bodies.body[temporal.end] as number,
    endOffset: bodies.offset[temporal.end] as number,
    isDisjunctive: profiles.length === 0,
    arcs: new Arcs(differences, first.length),
    clauses: [],
    rules: [...machines, ...profiles],
  };
}

/** Whether an activity needs more of a resource than there is. */
function asksTooMuch({ activities, capacities }: Project): boolean {
  return activities.some(
    ({ duration, demands }) => duration > 0 && demands.some((demand, at) => demand > (capacities[at] ?? 0)),
  );
}

/** The longest paths between the leaders of bodies. */
function pathsBetween({ leaders }: Bodies, { size, length }: LongestPaths): LongestPaths {
  const between = leaders.flatMap((from) => leaders.map((to) => length[from * size + to] as number));
  return { size: leaders.length, length: Int32Array.from(between) };
}

/** @returns null when a body has no time left within the horizon */
function firstBounds(temporal: Temporal, bodies: Bodies, paths: LongestPaths, gaps: number): number[] | null {
  const { size, length } = paths;
  const origin = bodies.body[temporal.origin] as number;
  const end = bodies.body[temporal.end] as number;
  const originAt = bodies.offset[temporal.origin] as number;
  const endAt = bodies.offset[temporal.end] as number;
  const bounds: number[] = [];
  for (let body = 0; body < size; body++) {
    // The origin is at 0, so its body's leader is `originAt` before it.
    const earliest = (length[origin * size + body] as number) - originAt;
    const byEnd = temporal.horizon - endAt - (length[body * size + end] as number);
    const byOrigin = -(length[body * size + origin] as number) - originAt;
    const latest = Math.min(byEnd, byOrigin);
    if (earliest > latest) return null;
    bounds.push(earliest, -latest);
  }
  for (let gap = 0; gap < gaps; gap++) bounds.push(0, -1);
  return bounds;
}

/**
 * The lags that are not the sum of others; those from or to the origin are in the bounds already. Two bodies that
 * gaps have made rigid stand for each other: neither is taken for a way round.
 */
function lagsBetween({ size, length }: LongestPaths, origin: number): Difference[] {
  const path = (from: number, to: number) => length[from * size + to] as number;
  const isRigid = (one: number, other: number) => path(one, other) + path(other, one) === 0;
  const all = Array.from({ length: size }, (_, body) => body);
  return all.flatMap((from) =>
    all.flatMap((to): Difference[] => {
      const least = path(from, to);
      if (from === to || from === origin || to === origin || least === NO_PATH) return [];
      const isSum = all.some(
        (via) =>
          path(from, via) + path(via, to) === least &&
          ![from, to].some((end) => end === via || isRigid(end, via)),
      );
      return isSum ? [] : [{ from, to, least, condition: null }];
    }),
  );
}

/** Either the other body comes after, or the one does. */
function sidesOf({ one, other, atMost, atLeast }: Gap, variable: number): Difference[] {
  return [
    { from: one, to: other, least: atLeast, condition: { side: 2 * variable, value: 1 } },
    { from: other, to: one, least: -atMost, condition: { side: 2 * variable + 1, value: 0 } },
  ];
}

/**
 * A resource is a machine to those activities that take more than half of it. Where they are all of its users the
 * gaps say the rest; else the resource as a whole is looked at as well.
 */
function rulesOf(
  { activities, capacities }: Project,
  { body, offset }: Bodies,
): { machines: Machine[]; profiles: Profile[] } {
  const machines: Machine[] = [];
  const profiles: Profile[] = [];
  for (const [resource, capacity] of capacities.entries()) {
    const users: ResourceActivity[] = activities.flatMap(({ duration, demands }, activity) => {
      const demand = demands[resource] ?? 0;
      if (demand === 0 || duration === 0) return [];
      return [{ body: body[activity] as number, offset: offset[activity] as number, duration, demand }];
    });
    // No two of these fit at once, so edge-finding holds among them even where others run beside.
    const greedy = users.filter(({ demand }) => 2 * demand > capacity);
    if (greedy.length > 2) {
      machines.push(new Machine(lookForward(greedy, capacity)), new Machine(lookBackward(greedy, capacity)));
    }
    if (greedy.length < users.length) {
      profiles.push(new Profile(lookForward(users, capacity)), new Profile(lookBackward(users, capacity)));
    }
  }
  return { machines, profiles };
}

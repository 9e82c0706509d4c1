import type { Minutes } from "../../time/instant.ts";
import type { Gives, Problem } from "../problem.ts";
import type { Circle } from "./circle.ts";

/** What keeps one task of a circle from others. */
export interface InAir {
  readonly piece: number;
  readonly minutes: Minutes;
  readonly look: boolean;
  readonly station: number | null;
  readonly setUp: number | null;
  readonly gives: readonly Gives[];
}

type Row = (Minutes | null)[];

/**
 * For every two tasks how long the later one must wait, to its own start and to the start of its set-up: until the hands
 * or the station are free, and until nothing is in the room that must be kept apart from it.
 */
export function apartTables(
  problem: Problem,
  tasks: readonly InAir[],
): Pick<Circle, "apart" | "apartFromSetUp"> {
  const apart: Row[] = [];
  const apartFromSetUp: Row[] = [];
  for (const one of tasks) {
    const row: Row = [];
    const fromSetUp: Row = [];
    for (const other of tasks) {
      const free = one.minutes + airClears(problem, one, other, false);
      const freeForSetUp = one.minutes + airClears(problem, one, other, true);
      const hinders = problem.hands === 1 ? !(one.look && other.look) : sharePlace(one, other);
      const meet = hinders || free > one.minutes || freeForSetUp > one.minutes;
      const own = setUpMinutes(problem, other);
      row.push(meet ? Math.max(free, freeForSetUp, one.minutes + changeover(problem, one, other)) : null);
      fromSetUp.push(meet ? Math.max(one.minutes, freeForSetUp, free - own) : null);
    }
    apart.push(row);
    apartFromSetUp.push(fromSetUp);
  }
  return { apart, apartFromSetUp };
}

/** The tasks that keep apart from what a set-up gives off as long as it stands. */
export function standingApart(problem: Problem, tasks: readonly InAir[], setUp: number): number[] {
  const gives = problem.setUps[setUp]?.gives ?? [];
  return [...tasks.keys()].filter((at) => {
    const task = tasks[at] as InAir;
    if (task.setUp === setUp) return false;
    return given(problem, task).some(({ what }) => gives.some((other) => keptApart(problem, what, other)));
  });
}

/** Minutes after the end of one task until the air is clear for another, or for what the other's set-up gives off. */
function airClears(problem: Problem, one: InAir, other: InAir, forSetUp: boolean): Minutes {
  const lasting = given(problem, one)
    .filter(({ what }) =>
      given(problem, other).some((its) => its.fromSetUp === forSetUp && keptApart(problem, what, its.what)),
    )
    .map(({ lasts }) => lasts);
  return Math.max(0, ...lasting);
}

/** All that a task gives off, with what its set-up does until it is put away. */
function given({ setUps }: Problem, { gives, setUp }: InAir): readonly Gives[] {
  const standing = setUp === null ? undefined : setUps[setUp];
  if (standing === undefined) return gives;
  const its = standing.gives.map((what) => ({ what, lasts: standing.putAway, fromSetUp: true }));
  return [...gives, ...its];
}

function keptApart({ apart }: Problem, one: number, other: number): boolean {
  return apart.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
}

function sharePlace(one: InAir, other: InAir): boolean {
  return one.station !== null && one.station === other.station;
}

function setUpMinutes({ setUps }: Problem, { setUp }: InAir): Minutes {
  return setUp === null ? 0 : (setUps[setUp]?.minutes ?? 0);
}

/** Between two set-ups of one station the later one is made, whichever task it is made for. */
function changeover(problem: Problem, one: InAir, other: InAir): Minutes {
  const before = one.setUp === null ? undefined : problem.setUps[one.setUp];
  const after = other.setUp === null ? undefined : problem.setUps[other.setUp];
  const changes = before !== undefined && one.setUp !== other.setUp && before.station === after?.station;
  return changes ? after.minutes : 0;
}

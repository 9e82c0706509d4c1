import type { Minutes } from "../../time/instant.ts";
import type { CircleSetUp } from "./circle.ts";
import type { Branching, Choice } from "./find-conflict.ts";
import { OPEN } from "./known-set-up.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * Whether its set-up is made for a task or stands from another, for the task with the fewest ways left of which that is
 * open; null: none is.
 */
export function openSetUp(relaxation: Relaxation, branching: Branching): readonly Choice[] | null {
  let fewest: readonly Choice[] | null = null;
  for (let task = 0; task < relaxation.size; task++) {
    if (relaxation.setUps[task] !== OPEN) continue;
    const standing = waysToStand(relaxation, task);
    if (fewest !== null && standing.length + 1 >= fewest.length) continue;
    const make: Choice = (into) => into.makeSetUp(task);
    fewest = branching === "turns first" ? [...standing, make] : [make, ...standing];
  }
  return fewest;
}

function waysToStand(relaxation: Relaxation, task: number): Choice[] {
  const { circle, size } = relaxation;
  const setUp = relaxation.setUpOf(task);
  if (setUp === null) return [];
  const ways: Choice[] = [];
  for (let host = 0; host < size; host++) {
    if (circle.tasks[host]?.setUp !== circle.tasks[task]?.setUp) continue;
    if (mayStand(relaxation, setUp, host, task)) ways.push((into) => into.letStand(task, host, false));
    // What must be put away before the bench shuts never stands over a night.
    if (setUp.putAway === 0) ways.push((into) => into.letStand(task, host, true));
  }
  return ways;
}

/** Whether the two can be near enough, in one order and one session where that is asked. */
function mayStand(relaxation: Relaxation, setUp: CircleSetUp, host: number, task: number): boolean {
  if (host === task || relaxation.isBefore(task, host)) return false;
  const { circle, minutes } = relaxation;
  const nearest = minutes.least(host, task);
  if (nearest > keptFor(relaxation, setUp, host, task)) return false;
  if (-minutes.least(task, host) < 1) return false;
  if (setUp.putAway === 0) return true;
  const count = circle.sessions.length;
  return circle.sessions.some(
    (_, session) =>
      relaxation.mayLieIn[host * count + session] === 1 && relaxation.mayLieIn[task * count + session] === 1,
  );
}

/** Most minutes from the start of a task to that of another for which its set-up stands; mixed for it at the latest. */
function keptFor({ circle }: Relaxation, { keeps }: CircleSetUp, host: number, task: number): Minutes {
  if (keeps.way === "load") return circle.period;
  const own = circle.tasks[keeps.way === "heat" ? host : task]?.minutes ?? 0;
  return keeps.way === "heat" ? own + keeps.minutes : keeps.minutes - own;
}

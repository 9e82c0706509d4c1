import type { Circle } from "./circle.ts";
import { STANDS } from "./known-set-up.ts";
import { Relaxation } from "./relaxation.ts";

/** The whole problem as a relaxation, before anything is chosen; null: it contradicts itself at once. */
export function beginRelaxation(circle: Circle): Relaxation | null {
  const relaxation = new Relaxation(circle);
  const { size } = relaxation;
  for (const [index, { fixed, session, before }] of circle.tasks.entries()) {
    if (!relaxation.raiseMinute(size, index, fixed ?? 0)) return null;
    if (!relaxation.raiseMinute(index, size, -(fixed ?? relaxation.longest - 1))) return null;
    if (!beginSetUp(relaxation, index)) return null;
    if (session !== undefined && !relaxation.lieIn(index, session)) return null;
    if (before?.every((other) => relaxation.setBefore(index, other)) === false) return null;
    // A task comes after itself a period later.
    const self = relaxation.apart(index, index);
    if (self !== null && self > relaxation.longest) return null;
  }
  for (const { from, to, least, most } of circle.lags) {
    if (!relaxation.raiseStart(from, to, least)) return null;
    if (most !== null && !relaxation.raiseStart(to, from, -most)) return null;
  }
  for (let task = 0; task < size; task++) relaxation.touchAll(task);
  return relaxation;
}

/** What is plain of a set-up from the beginning: it always stands, or no other task can have left it. */
function beginSetUp(relaxation: Relaxation, task: number): boolean {
  const { circle } = relaxation;
  const setUp = relaxation.setUpOf(task);
  if (setUp === null) {
    relaxation.setUps[task] = STANDS;
    return true;
  }
  const number = circle.tasks[task]?.setUp;
  const users = circle.tasks.filter((other) => {
    const used = other.setUp === null ? undefined : circle.setUps[other.setUp];
    return used?.station === setUp.station;
  });
  const alike = users.filter((other) => other.setUp === number).length;
  if (setUp.keeps.way === "load" && setUp.putAway === 0 && alike === users.length) {
    relaxation.setUps[task] = STANDS;
    return true;
  }
  if (circle.tasks[task]?.made === true) return relaxation.makeSetUp(task);
  return alike > 1 || (setUp.putAway === 0 && users.length === 1) || relaxation.makeSetUp(task);
}

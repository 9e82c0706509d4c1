import type { Branching, Choice } from "./find-conflict.ts";
import { OPEN, type Relaxation } from "./relaxation.ts";

/** The first task of which it is open whether its set-up is made for it or stands from another; null: none. */
export function openSetUp(relaxation: Relaxation, branching: Branching): readonly Choice[] | null {
  const { circle, size } = relaxation;
  const task = relaxation.setUps.indexOf(OPEN);
  if (task < 0) return null;
  const choices: Choice[] = [];
  for (let host = 0; host < size; host++) {
    if (circle.tasks[host]?.setUp !== circle.tasks[task]?.setUp) continue;
    if (host !== task) choices.push((into) => into.letStand(task, host, false));
    // What must be put away before the bench shuts never stands over a night.
    if (relaxation.setUpOf(task)?.putAway === 0) choices.push((into) => into.letStand(task, host, true));
  }
  const make: Choice = (into) => into.makeSetUp(task);
  return branching === "turns first" ? [...choices, make] : [make, ...choices];
}

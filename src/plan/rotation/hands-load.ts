import { MADE } from "./known-set-up.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * Whether all the work of a turn can lie in its sessions, by minutes of all hands alone: the work that must lie in each,
 * and all of it in all together, with the set-ups that are known to be made.
 */
export function fitsSessions(relaxation: Relaxation): boolean {
  const { circle, size } = relaxation;
  const { sessions } = circle;
  const work = new Array<number>(sessions.length).fill(0);
  let loose = loadOfOpenSetUps(relaxation);
  for (let task = 0; task < size; task++) {
    const minutes = handsOf(relaxation, task);
    const only = onlySession(relaxation, task);
    if (only === null) loose += minutes;
    else work[only] = (work[only] as number) + minutes;
  }
  let room = 0;
  for (const [session, { opens, closes }] of sessions.entries()) {
    const open = closes - opens - relaxation.owed(session, -1);
    const left = open * circle.hands - (work[session] as number);
    if (left < 0) return false;
    room += left;
  }
  return loose <= room;
}

function handsOf(relaxation: Relaxation, task: number): number {
  const setUp = relaxation.setUps[task] === MADE ? (relaxation.setUpOf(task)?.minutes ?? 0) : 0;
  return (relaxation.circle.tasks[task]?.minutes ?? 0) + setUp;
}

function onlySession(relaxation: Relaxation, task: number): number | null {
  const count = relaxation.circle.sessions.length;
  let only: number | null = null;
  for (let session = 0; session < count; session++) {
    if (relaxation.mayLieIn[task * count + session] !== 1) continue;
    if (only !== null) return null;
    only = session;
  }
  return only;
}

/** A set-up that shares its station with another is made at least once a turn, for whichever of its tasks. */
function loadOfOpenSetUps({ circle, setUps }: Relaxation): number {
  return circle.setUps.reduce((sum, { station, minutes }, index) => {
    const alone = !circle.setUps.some(
      (other, at) => at !== index && other.station === station && used(circle, at),
    );
    const made = circle.tasks.some(({ setUp }, task) => setUp === index && setUps[task] === MADE);
    return alone || made || !used(circle, index) ? sum : sum + minutes;
  }, 0);
}

function used({ tasks }: Relaxation["circle"], setUp: number): boolean {
  return tasks.some((task) => task.setUp === setUp);
}

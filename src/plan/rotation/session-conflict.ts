import type { Choice } from "./find-conflict.ts";
import { STANDS } from "./known-set-up.ts";
import { type Placing, sessionIn } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * A task whose session is open, where that matters: its set-up stands from one in another session though it would have
 * been put away, or what it uses leaves its session too little time for putting away.
 */
export function findSessionConflict(relaxation: Relaxation, placing: Placing): readonly Choice[] | null {
  const { size, circle } = relaxation;
  if (circle.sessions.length < 2) return null;
  for (let task = 0; task < size; task++) {
    const setUp = relaxation.setUpOf(task);
    if (setUp === null || setUp.putAway === 0) continue;
    const session = sessionIn(relaxation, placing, task);
    const host = relaxation.setUps[task] === STANDS ? (relaxation.hosts[task] as number) : -1;
    const parted = host >= 0 && sessionIn(relaxation, placing, host) !== session;
    if (!parted && !isLate(relaxation, placing, task, session)) continue;
    const choices = chooseSession(relaxation, task) ?? (host < 0 ? null : chooseSession(relaxation, host));
    if (choices !== null) return choices;
  }
  return null;
}

/** Whether some task of the session ends too late for what this task leaves to put away. */
function isLate(relaxation: Relaxation, placing: Placing, task: number, session: number): boolean {
  const { circle, size } = relaxation;
  const closes = circle.sessions[session]?.closes ?? 0;
  const stations = new Map<number, number>();
  let last = 0;
  for (let other = 0; other < size; other++) {
    if (sessionIn(relaxation, placing, other) !== session) continue;
    last = Math.max(last, (placing.minutes[other] as number) + (circle.tasks[other]?.minutes ?? 0));
    const own = relaxation.setUpOf(other);
    if (own !== null) stations.set(own.station, Math.max(stations.get(own.station) ?? 0, own.putAway));
  }
  const owed = [...stations.values()].reduce((sum, minutes) => sum + minutes, 0);
  return last + owed > closes && relaxation.setUpOf(task) !== null;
}

function chooseSession(relaxation: Relaxation, task: number): readonly Choice[] | null {
  const { sessions } = relaxation.circle;
  const open = [...sessions.keys()].filter(
    (session) => relaxation.mayLieIn[task * sessions.length + session] === 1,
  );
  return open.length < 2 ? null : open.map((session) => (into) => into.lieIn(task, session));
}

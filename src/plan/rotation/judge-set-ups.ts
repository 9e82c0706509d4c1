import { OPEN, STANDS } from "./known-set-up.ts";
import type { Relaxation } from "./relaxation.ts";

/** A set-up that stands was last used by its host, kept long enough, and nothing it is apart from came between. */
export function judgeSetUps(relaxation: Relaxation): boolean {
  for (let task = 0; task < relaxation.size; task++) {
    if (relaxation.setUps[task] !== STANDS || (relaxation.hosts[task] as number) < 0) continue;
    if (!judgeStanding(relaxation, task)) return false;
  }
  return true;
}

function judgeStanding(relaxation: Relaxation, task: number): boolean {
  const { circle } = relaxation;
  const setUp = relaxation.setUpOf(task);
  if (setUp === null) return true;
  const host = relaxation.hosts[task] as number;
  if (setUp.putAway > 0 && !lieTogether(relaxation, task, host)) return false;
  const around = relaxation.overnight[task] === 1 ? circle.period : 0;
  for (let other = 0; other < relaxation.size; other++) {
    const use = relaxation.setUpOf(other)?.station === setUp.station;
    if (other === task || other === host || !(use || setUp.apartFrom.includes(other))) continue;
    if (!keepFromBetween(relaxation, other, host, task, around > 0)) return false;
  }
  if (setUp.keeps.way === "heat") {
    const minutes = circle.tasks[host]?.minutes ?? 0;
    return relaxation.raiseMinute(task, host, around - minutes - setUp.keeps.minutes);
  }
  return setUp.keeps.way === "load" || judgeMix(relaxation, task, setUp.keeps);
}

/** Two tasks between which nothing is put away lie in one session. */
function lieTogether(relaxation: Relaxation, one: number, other: number): boolean {
  const count = relaxation.circle.sessions.length;
  let left = false;
  for (let session = 0; session < count; session++) {
    const place = one * count + session;
    const otherPlace = other * count + session;
    const both = relaxation.mayLieIn[place] === 1 && relaxation.mayLieIn[otherPlace] === 1;
    left ||= both;
    if (both || (relaxation.mayLieIn[place] === 0 && relaxation.mayLieIn[otherPlace] === 0)) continue;
    relaxation.mayLieIn[place] = 0;
    relaxation.mayLieIn[otherPlace] = 0;
    relaxation.touch(one, relaxation.size);
    relaxation.touch(other, relaxation.size);
  }
  return left;
}

/** A task does not stand between a host and the next use of its set-up. */
function keepFromBetween(
  relaxation: Relaxation,
  other: number,
  host: number,
  task: number,
  overnight: boolean,
): boolean {
  if (overnight) {
    if (host === task) return false;
    return relaxation.setBefore(task, other) && relaxation.setBefore(other, host);
  }
  if (relaxation.isBefore(host, other))
    return relaxation.isBefore(task, other) || relaxation.setBefore(task, other);
  if (relaxation.isBefore(other, task))
    return relaxation.isBefore(other, host) || relaxation.setBefore(other, host);
  return true;
}

/** A cup is used up before its pot life is over, by no more tasks than it serves. */
function judgeMix(
  relaxation: Relaxation,
  task: number,
  keeps: { readonly minutes: number; readonly serves: number },
): boolean {
  let around = 0;
  let mixedFor = task;
  for (let served = 1; relaxation.setUps[mixedFor] === STANDS; served++) {
    if (served >= keeps.serves) return false;
    if (relaxation.overnight[mixedFor] === 1) around += relaxation.circle.period;
    mixedFor = relaxation.hosts[mixedFor] as number;
  }
  if (relaxation.setUps[mixedFor] === OPEN) return true;
  return relaxation.raiseMinute(
    task,
    mixedFor,
    around + (relaxation.circle.tasks[task]?.minutes ?? 0) - keeps.minutes,
  );
}

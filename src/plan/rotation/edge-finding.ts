import type { Circle } from "./circle.ts";
import { MADE } from "./known-set-up.ts";
import type { Relaxation } from "./relaxation.ts";

/** Where the work of each task with its set-up may lie on the circle, and how long it is. */
interface Spread {
  readonly from: Int32Array;
  readonly until: Int32Array;
  readonly work: Int32Array;
  /** The longest work of all. */
  readonly longest: number;
}

/**
 * Edge finding for one pair of hands (Carlier and Pinson, An algorithm for solving the job-shop problem, Management
 * Science 35(2), 1989): work that has to lie within a stretch of the circle, and does not fit in it together with one
 * task more, comes wholly before (or after) that task. Closed hours in the stretch are no room.
 *
 * @returns false: some stretch has more work than room
 */
export function findEdges(relaxation: Relaxation): boolean {
  const { size } = relaxation;
  const spread = spreadOf(relaxation);
  const { from, until, work, longest } = spread;
  const byEnd = sortBy(until);
  for (let first = 0; first < size; first++) {
    const opens = from[first] as number;
    // Stretches that open then have been looked at.
    if (from.indexOf(opens) < first) continue;
    let load = 0;
    for (let place = 0; place < size; place++) {
      const task = byEnd[place] as number;
      if ((from[task] as number) < opens) continue;
      load += work[task] as number;
      const shuts = until[task] as number;
      // A longer stretch that shuts at the same moment has more work in no more room.
      const room = openMinutes(relaxation, opens, shuts);
      if (load > room) return false;
      if (load + longest > room && !judgeStretch(relaxation, spread, opens, shuts, room)) return false;
    }
  }
  return true;
}

function spreadOf(relaxation: Relaxation): Spread {
  const { size, circle, minutes, setUps } = relaxation;
  const from = new Int32Array(size);
  const until = new Int32Array(size);
  const work = new Int32Array(size);
  let longest = 0;
  for (let task = 0; task < size; task++) {
    const own = circle.tasks[task]?.minutes ?? 0;
    const head = setUps[task] === MADE ? (relaxation.setUpOf(task)?.minutes ?? 0) : 0;
    from[task] = minutes.least(size, task) - head;
    until[task] = -minutes.least(task, size) + own;
    work[task] = own + head;
    longest = Math.max(longest, own + head);
  }
  return { from, until, work, longest };
}

/** All tasks by rising minutes; of the same, the lower number first. */
function sortBy(minutes: Int32Array): Uint16Array {
  const order = new Uint16Array(minutes.length);
  for (let task = 0; task < order.length; task++) {
    let place = task;
    for (; place > 0; place--) {
      const other = order[place - 1] as number;
      if ((minutes[other] as number) <= (minutes[task] as number)) break;
      order[place] = other;
    }
    order[place] = task;
  }
  return order;
}

function judgeStretch(
  relaxation: Relaxation,
  { from, until, work }: Spread,
  opens: number,
  shuts: number,
  room: number,
): boolean {
  const { size } = relaxation;
  const inside: number[] = [];
  let load = 0;
  for (let task = 0; task < size; task++) {
    if ((from[task] as number) < opens || (until[task] as number) > shuts) continue;
    load += work[task] as number;
    inside.push(task);
  }
  for (let task = 0; task < size; task++) {
    if (load + (work[task] as number) <= room) continue;
    const last = (from[task] as number) >= opens && (until[task] as number) > shuts;
    const first = (until[task] as number) <= shuts && (from[task] as number) < opens;
    if (!last && !first) continue;
    for (const other of inside) {
      if (last ? relaxation.isBefore(other, task) : relaxation.isBefore(task, other)) continue;
      if (!(last ? relaxation.setBefore(other, task) : relaxation.setBefore(task, other))) return false;
    }
  }
  return true;
}

function openMinutes({ circle }: Relaxation, from: number, until: number): number {
  const { sessions } = circle;
  let sum = 0;
  for (let session = 0; session < sessions.length; session++) {
    const { opens, closes } = sessions[session] as Circle["sessions"][number];
    const minutes = Math.min(until, closes) - Math.max(from, opens);
    if (minutes > 0) sum += minutes;
  }
  return sum;
}

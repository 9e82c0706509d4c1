import { MADE, type Relaxation } from "./relaxation.ts";

/**
 * Edge finding for one pair of hands (Carlier and Pinson, An algorithm for solving the job-shop problem, Management
 * Science 35(2), 1989): work that has to lie within a stretch of the circle, and does not fit in it together with one
 * task more, comes wholly before (or after) that task. Closed hours in the stretch are no room.
 *
 * @returns false: some stretch has more work than room
 */
export function findEdges(relaxation: Relaxation): boolean {
  const { size } = relaxation;
  const from = new Int32Array(size);
  const until = new Int32Array(size);
  const work = new Int32Array(size);
  for (let task = 0; task < size; task++) {
    const minutes = relaxation.circle.tasks[task]?.minutes ?? 0;
    const head = relaxation.setUps[task] === MADE ? (relaxation.setUpOf(task)?.minutes ?? 0) : 0;
    from[task] = relaxation.minutes.least(size, task) - head;
    until[task] = -relaxation.minutes.least(task, size) + minutes;
    work[task] = minutes + head;
  }
  for (let start = 0; start < size; start++) {
    for (let end = 0; end < size; end++) {
      const opens = from[start] as number;
      const shuts = until[end] as number;
      if (shuts <= opens || (until[start] as number) > shuts || (from[end] as number) < opens) continue;
      if (!judgeStretch(relaxation, { from, until, work }, opens, shuts)) return false;
    }
  }
  return true;
}

interface Spread {
  readonly from: Int32Array;
  readonly until: Int32Array;
  readonly work: Int32Array;
}

function judgeStretch(relaxation: Relaxation, spread: Spread, opens: number, shuts: number): boolean {
  const { from, until, work } = spread;
  const { size } = relaxation;
  let load = 0;
  for (let task = 0; task < size; task++) {
    if ((from[task] as number) >= opens && (until[task] as number) <= shuts) load += work[task] as number;
  }
  const room = openMinutes(relaxation, opens, shuts);
  if (load > room) return false;
  for (let task = 0; task < size; task++) {
    if (load + (work[task] as number) <= room) continue;
    const begins = from[task] as number;
    const ends = until[task] as number;
    const last = begins >= opens && ends > shuts;
    const first = ends <= shuts && begins < opens;
    if (!last && !first) continue;
    for (let inside = 0; inside < size; inside++) {
      if (inside === task || (from[inside] as number) < opens || (until[inside] as number) > shuts) continue;
      const known = last ? relaxation.isBefore(inside, task) : relaxation.isBefore(task, inside);
      if (known) continue;
      const holds = last ? relaxation.setBefore(inside, task) : relaxation.setBefore(task, inside);
      if (!holds) return false;
    }
  }
  return true;
}

function openMinutes({ circle }: Relaxation, from: number, until: number): number {
  let sum = 0;
  for (const { opens, closes } of circle.sessions) {
    sum += Math.max(0, Math.min(until, closes) - Math.max(from, opens));
  }
  return sum;
}

import type { Circle } from "../../../src/plan/rotation/circle.ts";

/** Where each task of a circle starts, counted on from its piece's turn, and whether its set-up is made for it. */
interface Solved {
  readonly starts: readonly number[];
  readonly made: readonly boolean[];
}

/**
 * Everything about starts that breaks a circle, read minute by minute from the words of `circle.ts`; it shares no code
 * with what solves circles. Empty: the rotation holds.
 */
export function checkCircle(circle: Circle, solved: Solved): string[] {
  if (
    solved.starts.length !== circle.tasks.length ||
    solved.starts.some((start) => !Number.isInteger(start))
  ) {
    return ["not every task has a start in whole minutes"];
  }
  return [
    ...checkWaits(circle, solved),
    ...checkHours(circle, solved),
    ...checkAir(circle, solved),
    ...checkHands(circle, solved),
    ...checkApart(circle, solved),
    ...checkStanding(circle, solved),
    ...checkHolds(circle, solved),
  ];
}

const around = (minutes: number, period: number): number => ((minutes % period) + period) % period;

function setUpOf({ tasks, setUps }: Circle, task: number) {
  const number = tasks[task]?.setUp ?? null;
  return number === null ? null : (setUps[number] ?? null);
}

function headOf(circle: Circle, { made }: Solved, task: number): number {
  return made[task] === true ? (setUpOf(circle, task)?.minutes ?? 0) : 0;
}

function checkWaits({ lags }: Circle, { starts }: Solved): string[] {
  return lags.flatMap(({ from, to, least, most, gaps = [] }) => {
    const waited = (starts[to] ?? Number.NaN) - (starts[from] ?? Number.NaN);
    const inGap = gaps.some(({ shuts, opens }) => waited > shuts && waited < opens);
    const holds = waited >= least && (most === null || waited <= most) && !inGap;
    return holds ? [] : [`${to} starts ${waited} after ${from}`];
  });
}

/** Work with its set-up lies in one session, which has time left to put away all that was used in it. */
function checkHours(circle: Circle, solved: Solved): string[] {
  const { period, sessions, tasks } = circle;
  const wrong: string[] = [];
  const inside: number[][] = sessions.map(() => []);
  for (const [task, { minutes }] of tasks.entries()) {
    const end = around(solved.starts[task] ?? 0, period) + minutes;
    const from = end - minutes - headOf(circle, solved, task);
    const session = sessions.findIndex(({ opens, closes }) => from >= opens && end <= closes);
    if (session < 0) wrong.push(`${task} is worked outside the bench at ${from}`);
    inside[session]?.push(task);
  }
  for (const [session, { closes }] of sessions.entries()) {
    const there = inside[session] ?? [];
    const owed = new Map<number, number>();
    let last = 0;
    for (const task of there) {
      last = Math.max(last, around(solved.starts[task] ?? 0, period) + (tasks[task]?.minutes ?? 0));
      const setUp = setUpOf(circle, task);
      if (setUp !== null) owed.set(setUp.station, Math.max(owed.get(setUp.station) ?? 0, setUp.putAway));
    }
    const away = [...owed.values()].reduce((sum, minutes) => sum + minutes, 0);
    if (there.length > 0 && last + away > closes) wrong.push(`session ${session} has no time to put away`);
  }
  return wrong;
}

/** No minute of a task lies in air unfit for it. */
function checkAir({ tasks, period }: Circle, { starts }: Solved): string[] {
  return tasks.flatMap(({ minutes, unfit = [] }, task) => {
    const all = Array.from({ length: minutes }, (_, passed) => around((starts[task] ?? 0) + passed, period));
    const bad = all.find((minute) => unfit.some(([from, until]) => minute >= from && minute < until));
    return bad === undefined ? [] : [`${task} is worked in unfit air at ${bad}`];
  });
}

/** No more works at once than there are hands, minute by minute; a look may come with another where there is one pair. */
function checkHands(circle: Circle, solved: Solved): string[] {
  const { period, tasks, hands, lags } = circle;
  const at = Array.from({ length: period }, (): number[] => []);
  const isLook = (task: number): boolean => lags.some(({ to, least, most }) => to === task && least === most);
  for (const [task, { minutes }] of tasks.entries()) {
    const start = solved.starts[task] ?? 0;
    for (let minute = start - headOf(circle, solved, task); minute < start + minutes; minute++) {
      at[around(minute, period)]?.push(task);
    }
  }
  return at.flatMap((there, minute) => {
    const count = hands === 1 && there.every(isLook) ? Math.min(1, there.length) : there.length;
    return count > hands ? [`${there.join(" and ")} share the hands at ${minute}`] : [];
  });
}

/** Any task after any other, round the circle, starts as late as the tables say; so does its set-up. */
function checkApart(circle: Circle, solved: Solved): string[] {
  const { tasks, period, apart, apartFromSetUp } = circle;
  const wrong: string[] = [];
  for (const one of tasks.keys()) {
    for (const other of tasks.keys()) {
      const least = apart[one]?.[other] ?? null;
      const leastToSetUp = apartFromSetUp[one]?.[other] ?? null;
      if (one === other || least === null || leastToSetUp === null) continue;
      const after = around((solved.starts[other] ?? 0) - (solved.starts[one] ?? 0), period);
      const head = headOf(circle, solved, other);
      const late = solved.made[other] === true ? after - head >= leastToSetUp : after >= least;
      if (!late) wrong.push(`${other} comes ${after} after ${one}`);
    }
  }
  return wrong;
}

/** What a task needs and does not make stands from the use of its station before. */
function checkStanding(circle: Circle, solved: Solved): string[] {
  const { period, tasks } = circle;
  const wrong: string[] = [];
  for (const [task, { setUp: number, minutes }] of tasks.entries()) {
    const setUp = setUpOf(circle, task);
    if (setUp === null || solved.made[task] === true) continue;
    const host = lastUser(circle, solved, task);
    const start = around(solved.starts[task] ?? 0, period);
    const since = host === task ? period : around(start - (solved.starts[host] ?? 0), period);
    if (tasks[host]?.setUp !== number) wrong.push(`${task} finds another set-up`);
    if (setUp.putAway > 0 && crossesNight(circle, start, since)) wrong.push(`${task} needs what is put away`);
    const between = setUp.apartFrom.filter((other) => {
      const ago = around(start - (solved.starts[other] ?? 0), period);
      return other !== task && other !== host && ago > 0 && ago < since;
    });
    if (between.length > 0) wrong.push(`${between.join(" and ")} lie in what stands for ${task}`);
    if (setUp.keeps.way === "heat" && since - (tasks[host]?.minutes ?? 0) > setUp.keeps.minutes) {
      wrong.push(`${task} finds it cold`);
    }
    if (setUp.keeps.way !== "mix") continue;
    let served = 1;
    let age = 0;
    for (let user = task; solved.made[user] !== true && served <= tasks.length; served++) {
      const before = lastUser(circle, solved, user);
      age += around((solved.starts[user] ?? 0) - (solved.starts[before] ?? 0), period);
      user = before;
    }
    if (served > setUp.keeps.serves) wrong.push(`${task} is one too many of its cup`);
    if (age + minutes > setUp.keeps.minutes) wrong.push(`${task} uses a cup of ${age} min`);
  }
  return wrong;
}

/** The task that used the station of another last; itself, a period ago, where it is the only one. */
function lastUser(circle: Circle, { starts }: Solved, task: number): number {
  const { period, tasks } = circle;
  const station = setUpOf(circle, task)?.station;
  let nearest = { task, ago: period };
  for (const other of tasks.keys()) {
    if (other === task || setUpOf(circle, other)?.station !== station) continue;
    const ago = around((starts[task] ?? 0) - (starts[other] ?? 0), period);
    if (ago < nearest.ago) nearest = { task: other, ago };
  }
  return nearest.task;
}

/** Whether the bench shuts in the minutes before one. */
function crossesNight({ sessions, period }: Circle, minute: number, since: number): boolean {
  return sessions.some(({ closes }) => around(minute - closes, period) < since);
}

function checkHolds({ holds, room, period }: Circle, { starts }: Solved): string[] {
  return room.flatMap((most, kind) => {
    const taken = new Array<number>(period).fill(0);
    for (const { of, task, after, minutes, freedBy } of holds) {
      const from = (starts[task] ?? 0) + after;
      const freed = freedBy === null ? Number.POSITIVE_INFINITY : (starts[freedBy] ?? 0);
      for (let minute = from; of === kind && minute < Math.min(from + minutes, freed); minute++) {
        const place = around(minute, period);
        taken[place] = (taken[place] ?? 0) + 1;
      }
    }
    return Math.max(...taken) > most ? [`${Math.max(...taken)} are held at once of ${most}`] : [];
  });
}

/** How many pieces are out at the most, counted minute by minute from first start to last end. */
export function countOut({ pieces, period }: Circle, starts: readonly number[]): number {
  const out = new Array<number>(period).fill(0);
  for (const { begins, ends } of pieces) {
    const from = Math.min(...begins.map((task) => starts[task] ?? 0));
    const until = Math.max(...ends.map(({ task, minutes }) => (starts[task] ?? 0) + minutes));
    for (let minute = from; minute < until; minute++) {
      const place = around(minute, period);
      out[place] = (out[place] ?? 0) + 1;
    }
  }
  return Math.max(...out);
}

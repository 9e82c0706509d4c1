import type { Circle } from "../../../src/plan/rotation/circle.ts";

/**
 * The least span of a small circle by trying every minute for every task, every way to make or keep its set-ups, and
 * every number of turns between its tasks; null: nothing holds. It knows the words of the problem and nothing else.
 */
export function tryAll(circle: Circle): number | null {
  let best: number | null = null;
  for (const minutes of allMinutes(circle, [])) {
    if (!allMade(circle).some((made) => holdsOnCircle(circle, minutes, made))) continue;
    for (const starts of allTurns(circle, minutes, [minutes[0] ?? 0])) {
      const last = circle.pieces[0]?.ends[0];
      const span = (starts[last?.task ?? 0] ?? 0) + (last?.minutes ?? 0) - (starts[0] ?? 0);
      if ((best === null || span < best) && hooksHold(circle, starts)) best = span;
    }
  }
  return best;
}

function allMinutes(circle: Circle, before: readonly number[]): number[][] {
  const task = circle.tasks[before.length];
  if (task === undefined) return [[...before]];
  const all: number[][] = [];
  for (const { opens, closes } of circle.sessions) {
    for (let minute = opens; minute + task.minutes <= closes; minute++) {
      const end = minute + task.minutes;
      if (task.unfit?.some(([from, until]) => from < end && until > minute)) continue;
      all.push(...allMinutes(circle, [...before, minute]));
    }
  }
  return all;
}

function allMade({ tasks }: Circle): boolean[][] {
  return tasks.reduce<boolean[][]>(
    (all, { setUp }) =>
      all.flatMap((made) =>
        setUp === null
          ? [[...made, false]]
          : [
              [...made, true],
              [...made, false],
            ],
      ),
    [[]],
  );
}

/** Waits go over as many turns as they must or may: at most three more. */
function allTurns(circle: Circle, minutes: readonly number[], before: readonly number[]): number[][] {
  const to = before.length;
  const lag = circle.lags[to - 1];
  const minute = minutes[to];
  if (minute === undefined || lag === undefined) return [[...before]];
  const all: number[][] = [];
  for (let turn = -1; turn <= 12; turn++) {
    const start = minute + turn * circle.period;
    const waited = start - (before[lag.from] ?? 0);
    if (waited < lag.least || (lag.most !== null && waited > lag.most)) continue;
    all.push(...allTurns(circle, minutes, [...before, start]));
    if (waited > lag.least + 2 * circle.period) break;
  }
  return all;
}

function holdsOnCircle(circle: Circle, minutes: readonly number[], made: readonly boolean[]): boolean {
  const { period, tasks, sessions, hands } = circle;
  const head = (task: number): number => (made[task] ? (setUpOf(circle, task)?.minutes ?? 0) : 0);
  const busy = new Array<number>(period).fill(0);
  for (const [task, { minutes: takes }] of tasks.entries()) {
    const start = minutes[task] ?? 0;
    const session = sessions.find(({ closes }) => closes > start);
    if (session === undefined || start - head(task) < session.opens) return false;
    for (let minute = start - head(task); minute < start + takes; minute++) {
      busy[minute] = (busy[minute] ?? 0) + 1;
      if ((busy[minute] ?? 0) > hands) return false;
    }
    for (const other of tasks.keys()) {
      const least = circle.apart[task]?.[other] ?? null;
      if (least === null) continue;
      const itself = other === task;
      const between = around((minutes[other] ?? 0) - start, period) || (itself ? period : 0);
      if (between < least + (itself ? 0 : head(other))) return false;
      if (itself && least + head(task) > period) return false;
    }
    if (setUpOf(circle, task) !== null && !made[task] && !stands(circle, minutes, made, task)) return false;
  }
  return sessions.every((session) => putAwayFits(circle, minutes, session));
}

function setUpOf({ tasks, setUps }: Circle, task: number) {
  const setUp = tasks[task]?.setUp ?? null;
  return setUp === null ? null : (setUps[setUp] ?? null);
}

/** The use of a task's station before it, and how many minutes before. */
function lastUse(circle: Circle, minutes: readonly number[], task: number): { host: number; ago: number } {
  const station = setUpOf(circle, task)?.station;
  let last = { host: task, ago: circle.period };
  for (const other of circle.tasks.keys()) {
    if (other === task || setUpOf(circle, other)?.station !== station) continue;
    const ago = around((minutes[task] ?? 0) - (minutes[other] ?? 0), circle.period);
    if (ago < last.ago) last = { host: other, ago };
  }
  return last;
}

/** Whether what a task needs stands from the use before it. */
function stands(circle: Circle, minutes: readonly number[], made: readonly boolean[], task: number): boolean {
  const setUp = setUpOf(circle, task);
  const { host, ago } = lastUse(circle, minutes, task);
  if (setUp === null || circle.tasks[host]?.setUp !== circle.tasks[task]?.setUp) return false;
  const start = minutes[task] ?? 0;
  const ended = start - ago + (circle.tasks[host]?.minutes ?? 0);
  const shut = circle.sessions.some(({ closes }) =>
    [closes - circle.period, closes].some((moment) => moment >= ended && moment <= start),
  );
  if (setUp.putAway > 0 && shut) return false;
  const { keeps } = setUp;
  if (keeps.way === "load") return true;
  if (keeps.way === "heat") return start <= ended + keeps.minutes;
  let since = ago;
  let served = 1;
  for (let mixed = host; !made[mixed]; served++) {
    const before = lastUse(circle, minutes, mixed);
    since += before.ago;
    mixed = before.host;
    if (served > circle.tasks.length) return false;
  }
  return served < keeps.serves && since + (circle.tasks[task]?.minutes ?? 0) <= keeps.minutes;
}

/** Each station used in a session is put away after the last work there. */
function putAwayFits(
  circle: Circle,
  minutes: readonly number[],
  { opens, closes }: Circle["sessions"][number],
): boolean {
  const inside = [...circle.tasks.keys()].filter((task) => {
    const minute = minutes[task] ?? 0;
    return minute >= opens && minute < closes;
  });
  const owed = new Map<number, number>();
  let last = opens;
  for (const task of inside) {
    last = Math.max(last, (minutes[task] ?? 0) + (circle.tasks[task]?.minutes ?? 0));
    const setUp = setUpOf(circle, task);
    if (setUp !== null) owed.set(setUp.station, Math.max(owed.get(setUp.station) ?? 0, setUp.putAway));
  }
  return last + [...owed.values()].reduce((sum, one) => sum + one, 0) <= closes;
}

function hooksHold({ holds, room, period }: Circle, starts: readonly number[]): boolean {
  const taken = new Array<number>(period).fill(0);
  for (const { task, after, minutes, freedBy } of holds) {
    const from = (starts[task] ?? 0) + after;
    const freed = freedBy === null ? Number.POSITIVE_INFINITY : (starts[freedBy] ?? 0);
    for (let minute = from; minute < Math.min(from + minutes, freed); minute++) {
      const place = around(minute, period);
      taken[place] = (taken[place] ?? 0) + 1;
    }
  }
  return Math.max(...taken) <= (room[0] ?? 0);
}

const around = (minutes: number, period: number): number => ((minutes % period) + period) % period;

import type { Minutes } from "../../../time/instant.ts";
import type { Circle, CircleLag } from "../circle.ts";
import { OpenTime } from "./open-time.ts";

/** A look at a coat, so many minutes after the start of the task that lays it. */
interface RouteLook {
  readonly task: number;
  readonly after: Minutes;
}

/** How one piece goes through its process: most tasks in a row, looks at fixed minutes, and what is done beside the row. */
export interface Route {
  /** Of one piece. */
  readonly circle: Circle;
  /** The longest chain of waits. */
  readonly row: readonly number[];
  /** By place in the row: when the next of it may start, in stretches counted from its own start. */
  readonly spans: readonly (readonly (readonly [Minutes, Minutes])[])[];
  /** By task. */
  readonly looks: readonly (readonly RouteLook[])[];
  /** By place in the row: the other tasks that can be put once that task is, each after all that wait for it. */
  readonly beside: readonly (readonly number[])[];
  /** Minutes from the start of a task until its last look is over. */
  readonly lasts: readonly Minutes[];
  readonly time: OpenTime;
}

/** The route of the one piece of a circle. */
export function routeOf(circle: Circle): Route {
  const { tasks, lags } = circle;
  const looks = tasks.map((_, task) =>
    lags
      .filter((lag) => lag.from === task && isLookAfter(circle, lag))
      .map(({ to, least }) => ({ task: to, after: least })),
  );
  const isLook = isLookOf({ looks });
  const order = inOrder(circle).filter((task) => !isLook.has(task));
  const row = longestRow(circle, order);
  return {
    circle,
    row,
    spans: row.slice(1).map((to, index) => {
      const from = row[index] as number;
      // Two tasks of one piece that follow each other are as far apart as any two.
      return spansOf(asOne(lags, from, to), circle.apart[from]?.[to] ?? 0, circle.period);
    }),
    looks,
    time: new OpenTime(circle),
    beside: besideRow(circle, row, order),
    lasts: tasks.map(({ minutes }, task) =>
      Math.max(minutes, ...(looks[task] ?? []).map((look) => look.after + (tasks[look.task]?.minutes ?? 0))),
    ),
  };
}

/** The tasks that are looks at what another laid. */
export function isLookOf({ looks }: Pick<Route, "looks">): ReadonlySet<number> {
  return new Set(looks.flatMap((own) => own.map(({ task }) => task)));
}

/** It comes at its minute after one task, and nothing waits for it. */
function isLookAfter({ lags }: Circle, { from, to, least, most }: CircleLag): boolean {
  return (
    least === most && lags.every((other) => other.from !== to && (other.to !== to || other.from === from))
  );
}

/** The tasks so that each comes after those it waits for. */
function inOrder({ tasks, lags }: Circle): number[] {
  const order: number[] = [];
  while (order.length < tasks.length) {
    const next = [...tasks.keys()].find(
      (task) =>
        !order.includes(task) &&
        lags.every(({ from, to, least }) => to !== task || least < 0 || order.includes(from)),
    );
    if (next === undefined) throw new Error("tasks that wait for each other");
    order.push(next);
  }
  return order;
}

/** Of all chains of waits that one which takes longest. */
function longestRow({ lags }: Circle, order: readonly number[]): number[] {
  const reached = new Map<number, { at: Minutes; from: number | null }>();
  let last: number | null = null;
  for (const task of order) {
    let best: { at: Minutes; from: number | null } = { at: 0, from: null };
    for (const { from, to, least } of lags) {
      const before = to === task ? reached.get(from) : undefined;
      if (before !== undefined && before.at + least > best.at) best = { at: before.at + least, from };
    }
    reached.set(task, best);
    if (last === null || best.at >= (reached.get(last)?.at ?? 0)) last = task;
  }
  const row: number[] = [];
  for (let task = last; task !== null; task = reached.get(task)?.from ?? null) row.unshift(task);
  return row;
}

/** What is not in the row goes with the first task of it that waits for it; else with the last. */
function besideRow({ lags }: Circle, row: readonly number[], order: readonly number[]): number[][] {
  const placeOf = new Map(row.map((task, place) => [task, place]));
  const others = order.filter((task) => !row.includes(task)).reverse();
  for (const task of others) {
    const after = lags.flatMap(({ from, to, least }) =>
      from === task && least >= 0 ? (placeOf.get(to) ?? []) : [],
    );
    placeOf.set(task, after.length === 0 ? row.length - 1 : Math.min(...after));
  }
  return row.map((_, place) => others.filter((task) => placeOf.get(task) === place));
}

/** The windows of a wait, from start to start; no longer than a period, for then the same minutes come again. */
function spansOf(
  { least, most, gaps = [] }: CircleLag,
  apart: Minutes,
  period: Minutes,
): (readonly [Minutes, Minutes])[] {
  const from = [least, ...gaps.map(({ opens }) => opens)];
  const until = [...gaps.map(({ shuts }) => shuts), most ?? Number.POSITIVE_INFINITY];
  return from.flatMap((begin, index) => {
    const first = Math.max(begin, apart);
    const last = Math.min(until[index] as number, first + period - 1);
    return first <= last ? [[first, last] as const] : [];
  });
}

/** All waits from one task to another, as one. */
function asOne(lags: readonly CircleLag[], from: number, to: number): CircleLag {
  const between = lags.filter((lag) => lag.from === from && lag.to === to);
  const most = between.flatMap((lag) => lag.most ?? []);
  return {
    from,
    to,
    least: Math.max(...between.map(({ least }) => least)),
    most: most.length === 0 ? null : Math.min(...most),
    gaps: between.flatMap(({ gaps }) => gaps ?? []).sort((one, other) => one.shuts - other.shuts),
  };
}

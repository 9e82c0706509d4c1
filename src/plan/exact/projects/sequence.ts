import { addLag, NO_PATH } from "./longest-paths.ts";
import type { ProjectModel } from "./project-model.ts";

/** Above this many bodies the table of all their sets is too large. */
const MOST_BODIES = 14;

/** What the order of bodies that must all come one after another gives: a bound, and the order that has it. */
export interface Sequence {
  /** No schedule ends earlier. */
  readonly bound: number;
  /** Times of all bodies when they come in this order; null: the order cannot be kept. */
  readonly times: readonly number[] | null;
}

/**
 * Where every two of the bodies get in each other's way, they come one after another, and the least time from each to
 * the next says what the best order takes (the travelling salesman's path, by dynamic programming over sets: Held and
 * Karp, Journal of the Society for Industrial and Applied Mathematics 10, 1962). For a flow shop without waiting the
 * bound is the optimum (Wismer, Operations Research 20, 1972); elsewhere bodies further apart in the order may ask
 * for more.
 *
 * @returns null where the project is not of this kind, or too large
 */
export function findSequence(model: ProjectModel): Sequence | null {
  const bodies = openBodies(model);
  if (bodies.length < 2 || bodies.length > MOST_BODIES) return null;
  const steps = stepsBetween(model, bodies);
  if (steps === null) return null;
  const heads = bodies.map((body) => model.first[2 * body] as number);
  const { size, length } = model.paths;
  const tails = bodies.map((body) => (length[body * size + model.goal] as number) + model.endOffset);
  const { bound, order } = shortestPath(steps, heads, tails);
  return {
    bound,
    times: timesInOrder(
      model,
      order.map((place) => bodies[place] as number),
    ),
  };
}

/** The bodies whose times are open, but for the end. */
function openBodies({ bodies, goal, first }: ProjectModel): number[] {
  return bodies.leaders.flatMap((_, body) => {
    const isFixed = (first[2 * body] as number) + (first[2 * body + 1] as number) === 0;
    return body === goal || isFixed ? [] : [body];
  });
}

/**
 * The least time from each body to each other that comes after it, row by row; NO_PATH: it cannot come after.
 *
 * @returns null when two bodies are not in each other's way
 */
function stepsBetween({ gaps, paths }: ProjectModel, bodies: readonly number[]): Int32Array | null {
  const count = bodies.length;
  const steps = new Int32Array(count * count).fill(NO_PATH);
  for (const { one, other, atMost, atLeast } of gaps) {
    const row = bodies.indexOf(one);
    const column = bodies.indexOf(other);
    if (row < 0 || column < 0) return null;
    // A second gap between the same two: an order alone does not say enough.
    if (steps[row * count + column] !== NO_PATH) return null;
    steps[row * count + column] = atLeast;
    steps[column * count + row] = -atMost;
  }
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (row === column || steps[row * count + column] !== NO_PATH) continue;
      if (steps[column * count + row] !== NO_PATH) continue;
      const there = paths.length[(bodies[row] as number) * paths.size + (bodies[column] as number)] as number;
      const back = paths.length[(bodies[column] as number) * paths.size + (bodies[row] as number)] as number;
      if (there < 0 && back < 0) return null;
      if (there >= 0) steps[row * count + column] = there;
      else steps[column * count + row] = back;
    }
  }
  return steps;
}

/** The order of all bodies that ends earliest, each no earlier than its head and followed by its tail. */
function shortestPath(
  steps: Int32Array,
  heads: readonly number[],
  tails: readonly number[],
): { bound: number; order: number[] } {
  const count = heads.length;
  const never = 2 ** 29;
  // By set and its last body: when that one can be, and which came before it.
  const time = new Int32Array(count << count).fill(never);
  const before = new Int8Array(count << count).fill(-1);
  for (let body = 0; body < count; body++) {
    time[(1 << body) * count + body] = heads[body] as number;
  }
  for (let set = 1; set < 1 << count; set++) {
    for (let last = 0; last < count; last++) {
      const now = time[set * count + last] as number;
      if (now >= never) continue;
      for (let next = 0; next < count; next++) {
        const step = steps[last * count + next] as number;
        if (set & (1 << next) || step === NO_PATH) continue;
        const place = (set | (1 << next)) * count + next;
        const reached = Math.max(now + step, heads[next] as number);
        if (reached >= (time[place] as number)) continue;
        time[place] = reached;
        before[place] = last;
      }
    }
  }
  const all = (1 << count) - 1;
  let last = 0;
  const endOf = (body: number) => (time[all * count + body] as number) + (tails[body] as number);
  for (let body = 1; body < count; body++) if (endOf(body) < endOf(last)) last = body;
  const bound = endOf(last);
  const order: number[] = [];
  for (let set = all, body = last; body >= 0; ) {
    order.unshift(body);
    const earlier = before[set * count + body] as number;
    set &= ~(1 << body);
    body = earlier;
  }
  return { bound, order };
}

/** The earliest times of all bodies when these come in this order. */
function timesInOrder(
  { paths, gaps, first, bodies }: ProjectModel,
  order: readonly number[],
): number[] | null {
  const ordered = { size: paths.size, length: paths.length.slice() };
  for (const { one, other, atMost, atLeast } of gaps) {
    const isAfter = order.indexOf(one) < order.indexOf(other);
    const lag = isAfter ? { from: one, to: other, least: atLeast } : { from: other, to: one, least: -atMost };
    if (!addLag(ordered, lag)) return null;
  }
  const { size, length } = ordered;
  const times = bodies.leaders.map((_, body) =>
    bodies.leaders.reduce((latest, _, from) => {
      const path = length[from * size + body] as number;
      return path === NO_PATH ? latest : Math.max(latest, (first[2 * from] as number) + path);
    }, Number.NEGATIVE_INFINITY),
  );
  return times.every((time, body) => time <= -(first[2 * body + 1] as number)) ? times : null;
}

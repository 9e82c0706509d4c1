import type { Minutes } from "../../../time/instant.ts";
import type { Circle } from "../circle.ts";
import type { CircleAnswer } from "../solve-circle.ts";
import { spanOf } from "../spans.ts";

/** One piece on the circle: where each of its tasks starts, counted on from the turn in which it is begun. */
export interface Placed {
  readonly starts: readonly Minutes[];
  /** By task, whether its set-up is made directly before it. */
  readonly made: readonly boolean[];
  /** Its first start, and the end of its last work. */
  readonly from: Minutes;
  readonly until: Minutes;
}

/** The pieces of an answer, in their order. `circle`: of one such piece. */
export function placedIn(
  { tasks, pieces: [first] }: Pick<Circle, "tasks" | "pieces">,
  { starts, made }: Pick<CircleAnswer, "starts" | "made">,
): Placed[] {
  if (starts === null || first === undefined) return [];
  const { begins } = first;
  return Array.from({ length: Math.floor(starts.length / tasks.length) }, (_, piece) => {
    const own = starts.slice(piece * tasks.length, (piece + 1) * tasks.length);
    const from = Math.min(...begins.map((task) => own[task] ?? 0));
    return {
      starts: own,
      made: made.slice(piece * tasks.length, (piece + 1) * tasks.length),
      from,
      until: from + spanOf(first, own),
    };
  });
}

/** How many of such pieces are out at the most. */
export function mostOut(pieces: readonly Pick<Placed, "from" | "until">[], period: Minutes): number {
  return Math.max(0, ...pieces.map(({ from }) => outAt(pieces, from, period)));
}

/** How many are out at a moment, one copy of each begun every period. */
export function outAt(
  pieces: readonly Pick<Placed, "from" | "until">[],
  moment: Minutes,
  period: Minutes,
): number {
  return pieces.reduce((sum, { from, until }) => {
    return sum + Math.floor((moment - from) / period) - Math.floor((moment - until) / period);
  }, 0);
}

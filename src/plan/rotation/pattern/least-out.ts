import type { Minutes } from "../../../time/instant.ts";
import { freely } from "./least-spans.ts";
import type { Route } from "./route.ts";
import { TailSpace } from "./space.ts";
import { tailsOf } from "./tails.ts";

/**
 * The fewest pieces out, at the most at once, with so many a period. With no more than k out their spans can be laid in k
 * rows, in each of which one follows the other; and a row has room for no more than the quickest succession of pieces,
 * each begun when the one before has had its last hands-on (colouring an interval graph takes as many colours as overlap
 * at once; the rotation number of a monotone map of the circle is the same from any beginning).
 */
export function leastOutOf({ minutes, pieces: own }: Succession, pieces: number, period: Minutes): number {
  return Math.ceil((pieces * minutes) / (own * period));
}

/** So many pieces one after the other, each begun as soon as it is of use, take so many minutes, again and again. */
export interface Succession {
  readonly pieces: number;
  readonly minutes: Minutes;
}

/** The quickest succession of a process at a bench; null: it has no way through at all. */
export function quickestSuccession(route: Route): Succession | null {
  const { time, circle } = route;
  const { period } = circle;
  const out = Float64Array.from({ length: period + 1 }, (_, minute) => minute);
  const costs = circle.tasks.map((_, task) => freely(route, task));
  const [first] = tailsOf({ route, costs, out, space: new TailSpace(route) });
  // By minute: the earliest end of a piece that is begun then or later in the period.
  const ends = new Float64Array(period + 1).fill(Number.POSITIVE_INFINITY);
  for (let minute = period - 1; minute >= 0; minute--) {
    const slot = time.isOpen(minute) ? time.slotsBefore[minute] : undefined;
    const span = slot === undefined ? Number.POSITIVE_INFINITY : (first?.least[slot] ?? Infinity);
    ends[minute] = Math.min(ends[minute + 1] as number, minute + span);
  }
  const inNext = (ends[0] as number) + period;
  if (!Number.isFinite(inNext)) return null;
  const seen = new Map<Minutes, Succession>();
  for (let pieces = 0, at = 0; ; pieces++) {
    const minute = at % period;
    const before = seen.get(minute);
    if (before !== undefined) return { pieces: pieces - before.pieces, minutes: at - before.minutes };
    seen.set(minute, { pieces, minutes: at });
    at += Math.min(ends[minute] as number, inNext) - minute;
  }
}

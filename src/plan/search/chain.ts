import type { BenchPiece, BenchTask } from "./bench.ts";
import type { Followers } from "./start-grid.ts";

/** The tasks still to do of a piece, taken one after the other. */
export interface Chain {
  readonly piece: BenchPiece;
  readonly steps: readonly ChainStep[];
  /** It takes room under the limit from its first step on. */
  readonly takesRoom: boolean;
}

export interface ChainStep {
  readonly task: BenchTask;
  /** How many pairs of hands it counts for. */
  readonly hands: number;
  /** It has no start before that. */
  readonly from: number;
  /** By start. */
  readonly ends: Int32Array;
  /** By start: until when the piece then hangs; null: it does not. */
  readonly hung: Int32Array | null;
  readonly followers: Followers;
  /** By start: what it and all after it cost, and the start of the step after it. */
  readonly costs: Float64Array;
  readonly next: Int32Array;
  /** By start: that from it on which costs least; -1: there is none. */
  readonly least: Int32Array;
}

/** Finds, for each start of a step, the one from it on that costs least. */
export function noteLeast({ from, costs, least }: ChainStep): void {
  let best = -1;
  let leastCost = Number.POSITIVE_INFINITY;
  for (let start = costs.length - 1; start >= from; start--) {
    const cost = costs[start] as number;
    if (cost < Number.POSITIVE_INFINITY && cost <= leastCost) {
      leastCost = cost;
      best = start;
    }
    least[start] = best;
  }
}

/** The last start from which the piece has a way: there is one. */
export function lastStart({ least }: ChainStep): number {
  let last = least.length - 1;
  while ((least[last] as number) < 0) last--;
  return last;
}

/** The first step of a piece that was not played; null: all were. */
export function nextStep(
  steps: readonly ChainStep[],
  isPlayed: (task: BenchTask) => boolean,
): ChainStep | null {
  return stepAt(steps, nextPlace(steps, isPlayed, 0));
}

/** The step at a place; null: there is none. (Asked for what is not in a list, the engine looks for it long.) */
export function stepAt(steps: readonly ChainStep[], place: number): ChainStep | null {
  return place < steps.length ? (steps[place] as ChainStep) : null;
}

/**
 * The place of the first step of a piece that was not played, or how many steps there are.
 *
 * @param from all steps before that one were played
 */
export function nextPlace(
  steps: readonly ChainStep[],
  isPlayed: (task: BenchTask) => boolean,
  from: number,
): number {
  let place = from;
  while (place < steps.length && isPlayed((steps[place] as ChainStep).task)) place++;
  return place;
}

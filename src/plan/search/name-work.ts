import type { Chance } from "../chance.ts";
import type { Bench, BenchPiece, BenchTask } from "./bench.ts";

/** Names are whole numbers below this: the sums of two thousand are still exact. */
const BELOW = 2 ** 42;

/**
 * By task a name, drawn by chance: plans whose tasks' names come to the same sum have done the same work, whichever of the
 * pieces that are just alike it was done on (a hash of what was done, that needs no list to be compared: A. Zobrist, A new
 * hashing method with application for game playing, University of Wisconsin 1970; from memory).
 *
 * @param alike by piece: the first that is just like it
 */
export function nameWork({ pieces, tasks }: Bench, alike: readonly number[], chance: Chance): Float64Array {
  const names = Float64Array.from(tasks, () => Math.floor(BELOW * chance()));
  for (const piece of pieces) {
    const first = pieces[alike[piece.index] as number] as BenchPiece;
    for (const [place, { index }] of piece.tasks.entries())
      names[index] = names[(first.tasks[place] as BenchTask).index] as number;
  }
  return names;
}

/** The name of work done: the sum of its tasks' names. */
export function nameOf(done: readonly BenchTask[], names: Float64Array): number {
  let sum = 0;
  for (let place = 0; place < done.length; place++) sum += names[(done[place] as BenchTask).index] as number;
  return sum;
}

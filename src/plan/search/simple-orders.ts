import type { Plan } from "../plan.ts";
import type { BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { isToDo } from "./order-of.ts";
import type { Player } from "./play-order.ts";
import type { Recreate } from "./recreate.ts";
import { makeStyle } from "./style.ts";

/** What goes first of all that could be begun, least first. */
export type Rank = (task: BenchTask) => number;

/** After all that a plan had. */
const UNPLANNED = 1e9;

/**
 * What stood first in a plan goes first, but nothing waits for what cannot be begun now. The order itself, once an
 * evening has not gone as thought, may wait all night for a melt that no longer fits in, with all that stood behind it.
 */
export function asPlanned({ visits }: Plan): Rank {
  const starts = new Map<number, number>();
  for (const { task, start } of visits) starts.set(task, start);
  return ({ index }) => starts.get(index) ?? UNPLANNED + index;
}

/** What a maker does without a plan: the oldest piece first, or the newest. */
export const simpleRanks: readonly Rank[] = [({ piece }) => piece.index, ({ piece }) => -piece.index];

/** As a maker who plans nothing goes about it: a set-up is made whenever what goes first needs one. */
const STYLE = makeStyle({ grace: NEVER });

/** Dispatches all work by a rank. @returns what it costs; Infinity: more than the ceiling, or windows were missed */
export function playByRank(rank: Rank, player: Player, recreate: Recreate, ceiling: number): number {
  player.reset();
  const all = player.bench.tasks.filter(isToDo);
  for (const task of all) {
    recreate.rank[task.index] = rank(task);
    recreate.bonus[task.index] = 0;
  }
  return recreate.play(all, 0, ceiling, STYLE);
}

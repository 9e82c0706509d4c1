import type { Chance } from "../chance.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { isToDo } from "./order-of.ts";
import type { Player } from "./play-order.ts";
import type { Recreate } from "./recreate.ts";
import { ANY_NUMBER, type Style } from "./style.ts";

/** A rule that makes an order from nothing: which pieces go first, and how many may be in work. */
export interface Rule {
  readonly rank: (task: BenchTask) => number;
  readonly mostInWork: number;
}

/**
 * Rules worth a try, the most different ones first. Which limit on pieces in work is best depends on the shop far more
 * than which pieces go first, and only trying tells.
 */
export function firstRules(pieces: number): Rule[] {
  const limits = [ANY_NUMBER, 12, 8, 5, 16, 24, 3, 10, 6, 4].filter(
    (limit) => limit === ANY_NUMBER || limit < pieces,
  );
  return limits.flatMap((mostInWork) => ranks.map((rank) => ({ rank, mostInWork })));
}

/** Soonest due first; soonest released, and due, first; what is nearest its end, for its weight, first. */
const ranks: readonly ((task: BenchTask) => number)[] = [
  ({ piece }) => piece.due,
  ({ piece }) => piece.release + piece.due / piece.weight,
  ({ piece, tail, minutes }) => piece.release + (tail + minutes) / piece.weight,
];

/** A rule by chance: pieces about in order of release or due date, for their weight, with any limit in work. */
export function drawRule(bench: Bench, chance: Chance): Rule {
  const { pieces } = bench;
  const [byRelease, byDue, byWeight] = [chance(), chance(), chance() * chance()];
  const far = 3000 * chance();
  const keys = pieces.map(
    ({ release, due, weight }) =>
      byRelease * release +
      (byDue * Math.min(due, bench.horizon)) / (1 + byWeight * (weight - 1)) +
      far * chance(),
  );
  const mostInWork = chance() < 0.2 ? ANY_NUMBER : 2 + Math.floor(Math.min(20, pieces.length) * chance());
  return { rank: ({ piece }) => keys[piece.index] as number, mostInWork };
}

/** Dispatches all work by a rule. @returns what it costs; Infinity: more than the ceiling, or windows were missed */
export function dispatchBy(
  { rank, mostInWork }: Rule,
  player: Player,
  recreate: Recreate,
  ceiling: number,
): number {
  player.reset();
  const all = player.bench.tasks.filter(isToDo);
  for (const task of all) recreate.rank[task.index] = rank(task);
  const style: Style = { patience: 0, setUpCounts: 50, holdBack: true, gapsOnly: false, mostInWork };
  return recreate.play(all, 0, ceiling, style);
}

import type { Chance } from "../chance.ts";
import type { Bench, BenchTask } from "./bench.ts";
import { NEVER } from "./calendar.ts";
import { isToDo } from "./order-of.ts";
import type { Player } from "./play-order.ts";
import type { Recreate } from "./recreate.ts";
import { ANY_NUMBER, makeStyle, type Style } from "./style.ts";

/**
 * A rule that makes an order from nothing. A task should be begun by its piece's due date less what is still to do of
 * it, as often as `stretch` says; `byRelease` mixes in the release, `sooner` is each piece's own. A piece of great weight
 * goes before by `weighs`, one with much to do after by `longLast`, for each time that it is e-fold.
 */
export interface Rule {
  readonly byRelease: number;
  readonly stretch: number;
  readonly weighs: number;
  readonly longLast: number;
  readonly sooner: Float64Array;
  readonly style: Style;
}

/** The rules to begin with, the most different ones first. Which limit in work is best, only trying tells. */
export function firstRules({ pieces: { length: pieces }, mostOut }: Bench): Rule[] {
  const limits = [ANY_NUMBER, 16, 12, 8, 20, 5].filter((limit) => limit === ANY_NUMBER || limit < pieces);
  const ways = [
    { stretch: 0, weighs: 300, longLast: 0, grace: NEVER },
    { stretch: 1, weighs: 300, longLast: 0, grace: NEVER },
    { stretch: 2, weighs: 3000, longLast: 0, grace: NEVER },
    { stretch: 1, weighs: 1500, longLast: 1000, grace: 0 },
    { stretch: 2, weighs: 1500, longLast: 0, grace: 0 },
  ];
  const sooner = new Float64Array(pieces);
  const inTurn = mostOut === null ? null : false;
  return limits.flatMap((mostInWork) =>
    ways.map(({ grace, ...way }) => ({
      ...way,
      byRelease: 0,
      sooner,
      style: makeStyle({ setUpCounts: 50, grace, mostInWork, inTurn }),
    })),
  );
}

/** A rule near another: some of what it weighs is changed a little, or when some pieces should be done. */
export function varyRule(rule: Rule, chance: Chance): Rule {
  const around = (): number => chance() + chance() + chance() - 1.5;
  const may = (share: number): boolean => chance() < share;
  const scaled = (size: number, least: number): number =>
    Math.max(0, size * Math.exp(1.2 * around()) + least * around());
  const what = chance();
  const sooner = rule.sooner.slice();
  if (what > 0.4) {
    for (let count = 1 + Math.floor(5 * chance() * chance()); count > 0; count--) {
      const piece = Math.floor(chance() * sooner.length);
      sooner[piece] = (sooner[piece] as number) + 4000 * around() * chance();
    }
  }
  if (what > 0.6) return { ...rule, sooner };
  const { style } = rule;
  return {
    byRelease: may(0.2) ? Math.min(1, Math.max(0, rule.byRelease + 0.4 * around())) : rule.byRelease,
    stretch: may(0.3) ? Math.max(-1, rule.stretch + 0.8 * around()) : rule.stretch,
    weighs: may(0.3) ? scaled(rule.weighs, 50) : rule.weighs,
    longLast: may(0.2) ? scaled(rule.longLast, 200) - 50 : rule.longLast,
    sooner,
    style: makeStyle({
      ...style,
      setUpCounts: may(0.2) ? scaled(style.setUpCounts, 20) : style.setUpCounts,
      mostInWork: may(0.4) ? varyLimit(style.mostInWork, sooner.length, chance) : style.mostInWork,
      patience: may(0.15) ? (may(0.6) ? 0 : chance()) : style.patience,
      inTurn: style.inTurn !== null && may(0.3) ? !style.inTurn : style.inTurn,
      grace: may(0.1) ? (may(0.5) ? NEVER : 3000 * chance() * chance()) : style.grace,
    }),
  };
}

function varyLimit(limit: number, pieces: number, chance: Chance): number {
  if (limit < ANY_NUMBER) return Math.max(2, limit + Math.round(5 * (chance() + chance() + chance() - 1.5)));
  return chance() < 0.5 ? ANY_NUMBER : Math.floor(pieces / 2 + 8 * chance());
}

/** Writes into the ranks by when each task should be begun. */
export function rankBy(rule: Rule, bench: Bench, recreate: Recreate, tasks: readonly BenchTask[]): void {
  const { byRelease, stretch, weighs, longLast, sooner } = rule;
  const { rank, bonus } = recreate;
  for (let place = 0; place < tasks.length; place++) {
    const task = tasks[place] as BenchTask;
    const { due, release, weightLog, index } = task.piece;
    const latest = Math.min(due, bench.horizon);
    rank[task.index] =
      latest * (1 - byRelease) + release * byRelease - stretch * task.usualRest + (sooner[index] as number);
    bonus[task.index] = weighs * weightLog - longLast * task.restLog;
  }
}

/** Dispatches all work by a rule. @returns what it costs; Infinity: more than the ceiling, or windows were missed */
export function dispatchBy(rule: Rule, player: Player, recreate: Recreate, ceiling: number): number {
  player.reset();
  const all = player.bench.tasks.filter(isToDo);
  rankBy(rule, player.bench, recreate, all);
  return recreate.play(all, 0, ceiling, rule.style);
}

import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";

/** How tasks that were taken out come in again. */
export interface Style {
  /** 0: what can begin first goes first; 1: the hands may wait for what matters more, as long as nothing could be done meanwhile. */
  readonly patience: number;
  /** What a minute of setting up counts for, in minutes of rank. */
  readonly setUpCounts: number;
  /** Likewise a minute of the session for which a task keeps others out of the room, once done. */
  readonly airCounts: number;
  /** Likewise a minute of the session for which it has a hook. */
  readonly hookCounts: number;
  /**
   * What is later than so many minutes counts as no later: of all that is very late the bonus says what goes first (an
   * apparent tardiness cost: A. Vepsalainen, T. Morton, Priority rules for job shops with weighted tardiness costs,
   * Management Science 33, 1987). Null: ranks stay as they are, and no bonus counts.
   */
  readonly grace: Minutes | null;
  /** What would be kept out of the room goes before what would keep it out. */
  readonly holdBack: boolean;
  /** Only where nothing that keeps its order is delayed. */
  readonly gapsOnly: boolean;
  /**
   * No piece is begun while so many are in work. The fewer are in work, the sooner each is finished, as long as the
   * hands do not run dry (constant work in process: M. Spearman, D. Woodruff, W. Hopp, CONWIP: a pull alternative to
   * kanban, Int. J. Production Research 28, 1990).
   */
  readonly mostInWork: number;
  /**
   * Pieces under the limit on how many are out are begun in the sequence of their ranks: rather than let another have its
   * room, one that cannot be begun yet is waited for. Null: any number may be out, so there is no need to.
   */
  readonly inTurn: boolean | null;
}

/** Any number in work. */
export const ANY_NUMBER = 1_000_000;

/** A style that wastes no time and counts nothing but rank, but for what is said of it. */
export function makeStyle(more: Partial<Style>): Style {
  // Made here and nowhere else, field by field: so all are alike to the engine.
  return {
    patience: more.patience ?? 0,
    setUpCounts: more.setUpCounts ?? 0,
    airCounts: more.airCounts ?? 0,
    hookCounts: more.hookCounts ?? 0,
    grace: more.grace ?? null,
    holdBack: more.holdBack ?? true,
    gapsOnly: more.gapsOnly ?? false,
    mostInWork: more.mostInWork ?? ANY_NUMBER,
    inTurn: more.inTurn ?? null,
  };
}

// What may be a fraction is one first: the engine would count on whole numbers there, and compile again when it is not.
makeStyle({ patience: 0.5, setUpCounts: 0.5, airCounts: 0.5, hookCounts: 0.5, grace: 0.5 });

/** A style by chance, mostly one that wastes no time. */
export function drawStyle(chance: Chance, more: Partial<Style>): Style {
  return makeStyle({
    patience: chance() < 0.7 ? 0 : chance(),
    setUpCounts: chance() < 0.3 ? 0 : 500 * chance() * chance(),
    holdBack: chance() < 0.8,
    ...more,
  });
}

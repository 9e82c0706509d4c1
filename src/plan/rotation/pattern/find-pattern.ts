import type { Minutes } from "../../../time/instant.ts";
import type { Chance } from "../../chance.ts";
import { chanceFrom } from "../../chance.ts";
import type { Circle } from "../circle.ts";
import { ApartTables } from "./apart-tables.ts";
import { Harms } from "./harm.ts";
import { insertPiece } from "./insert-piece.ts";
import { mod } from "./mod.ts";
import { Occupied } from "./occupied.ts";
import { mostOut, outAt, type Placed } from "./placed.ts";
import { type Route, routeOf } from "./route.ts";
import { settleSetUps } from "./settle-set-ups.ts";
import { Space } from "./space.ts";

/** What a minute of set-up may count against a minute of span; drawn anew for each piece. */
const SET_UP_PRICES = [0, 0, 2, 8, 30];
/** The same of a minute that other pieces lose by what is left in the air. */
const HARM_PRICES = [0, 0.1, 0.5, 2];
/** Minutes of span that a worse pattern may have more to be gone on from, at the beginning. */
const SLACK: Minutes = 900;
/** What a minute with one too many out counts. */
const OVER = 4;
/** What a minute of set-up counts. */
const SET_UP = 6;
/** What a pattern counts worse for each piece that it lacks. */
const LACKING: Minutes = 1_000_000;

/** Patterns of several alike pieces a period, found by ruin and recreate; the same each time. */
export class PatternSearch {
  readonly route: Route;
  /** Pieces put in so far, over all. */
  insertions = 0;
  readonly #tables: ApartTables;
  readonly #harms: Harms;
  readonly #space: Space;

  /** @param circle of one piece */
  constructor(circle: Circle) {
    this.route = routeOf(circle);
    this.#tables = new ApartTables(this.route);
    this.#harms = new Harms(this.route, this.#tables);
    this.#space = new Space(this.route);
  }

  /**
   * Puts in as many pieces as are wanted with no more out than said, and then shortens what they take together.
   *
   * @param begun a pattern to begin from
   * @returns the best found: of most pieces, then of the least sum of spans
   */
  search(ask: PatternAsk): readonly Placed[] {
    const chance = chanceFrom(ask.seed);
    const cost = (pieces: readonly Placed[]): Minutes => {
      const { period } = this.route.circle;
      return (
        LACKING * (ask.pieces - pieces.length) +
        spansOf(pieces) +
        OVER * minutesOver(pieces, ask.out, period) +
        SET_UP * setUpMinutes(this.route, pieces)
      );
    };
    const isEnough = (pieces: readonly Placed[]): boolean => {
      if (pieces.length < ask.pieces || mostOut(pieces, this.route.circle.period) > ask.out) return false;
      return ask.shorten === null || spansOf(pieces) <= ask.shorten;
    };
    let now: readonly Placed[] = ask.begun;
    let costNow = cost(now);
    let best = now;
    let costBest = costNow;
    for (let round = 0; round < ask.rounds && !ask.isOver(); round++) {
      if (isEnough(best)) break;
      const next = this.#recreate(ask, round === 0 ? now : this.#ruin(now, chance), chance);
      const slack = SLACK * (1 - round / ask.rounds) * chance();
      const costNext = cost(next);
      if (costNext > costNow + slack) continue;
      now = next;
      costNow = costNext;
      if (costNow >= costBest) continue;
      best = now;
      costBest = costNow;
    }
    return best;
  }

  /** What is left of a pattern without one of its pieces, and without those that cannot do without it. */
  without(pieces: readonly Placed[], piece: Placed): readonly Placed[] {
    return settleSetUps(
      this.route,
      this.#tables,
      pieces.filter((one) => one !== piece),
    );
  }

  #ruin(pieces: readonly Placed[], chance: Chance): readonly Placed[] {
    const count = Math.min(pieces.length, 1 + Math.floor(chance() * 3));
    const left = [...pieces];
    for (let taken = 0; taken < count; taken++) left.splice(Math.floor(chance() * left.length), 1);
    return settleSetUps(this.route, this.#tables, left);
  }

  /** Puts in pieces one by one as long as they fit. */
  #recreate(ask: PatternAsk, pieces: readonly Placed[], chance: Chance): readonly Placed[] {
    let all = pieces;
    while (all.length < ask.pieces) {
      const occupied = new Occupied(this.route, all);
      const prices = {
        out: ask.out,
        over: OVER,
        setUp: pick(SET_UP_PRICES, chance),
        harm: pick(HARM_PRICES, chance),
        blur: chance() < 0.5 ? 0 : 1_440 * chance(),
      };
      this.insertions++;
      const placed = insertPiece({
        occupied,
        tables: this.#tables,
        harms: this.#harms,
        space: this.#space,
        prices,
        chance,
      });
      if (placed === null) break;
      all = settleSetUps(this.route, this.#tables, [...all, placed]);
    }
    return all;
  }
}

export interface PatternAsk {
  readonly pieces: number;
  /** How many may be out at once. */
  readonly out: number;
  readonly begun: readonly Placed[];
  readonly seed: number;
  readonly rounds: number;
  /** A sum of spans that cannot be bettered; null: with all pieces in and no more out than said it is enough. */
  readonly shorten: Minutes | null;
  readonly isOver: () => boolean;
}

function pick(list: readonly number[], chance: Chance): number {
  return list[Math.floor(chance() * list.length)] ?? 0;
}

/** What the pieces take from first start to last end, together. */
export function spansOf(pieces: readonly Placed[]): Minutes {
  return pieces.reduce((sum, { from, until }) => sum + until - from, 0);
}

/** How many minutes of a period more are out than may be, each counted for each piece too many. */
function minutesOver(pieces: readonly Placed[], most: number, period: Minutes): Minutes {
  const edges = pieces.flatMap(({ from, until }) => [mod(from, period), mod(until, period)]);
  const cuts = [...new Set(edges)].sort((one, other) => one - other);
  return cuts.reduce((sum, from, index) => {
    const until = cuts[index + 1] ?? (cuts[0] as number) + period;
    return sum + (until - from) * Math.max(0, outAt(pieces, from, period) - most);
  }, 0);
}

function setUpMinutes({ circle: { tasks, setUps } }: Route, pieces: readonly Placed[]): Minutes {
  return pieces.reduce(
    (sum, { made }) =>
      made.reduce(
        (own, is, task) => (is ? own + (setUps[tasks[task]?.setUp ?? -1]?.minutes ?? 0) : own),
        sum,
      ),
    0,
  );
}

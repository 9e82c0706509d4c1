import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import type { Bench, BenchPiece } from "./bench.ts";
import type { Player } from "./play-order.ts";
import { Recreate } from "./recreate.ts";
import type { RuleSearch } from "./rule-search.ts";
import { ANY_NUMBER, drawStyle, type Style } from "./style.ts";

/** What moves draw from. */
export class Drawing {
  readonly player: Player;
  readonly bench: Bench;
  readonly recreate: Recreate;
  readonly chance: Chance;
  /** Pieces that have tasks to do. */
  readonly pieces: readonly BenchPiece[];
  /** The limit on pieces in work that gave the last better plan. */
  inWork = ANY_NUMBER;
  readonly rules: RuleSearch;

  constructor(player: Player, chance: Chance, rules: RuleSearch) {
    this.rules = rules;
    this.player = player;
    this.bench = player.bench;
    this.recreate = new Recreate(player);
    this.chance = chance;
    this.pieces = this.bench.pieces.filter(({ tasks }) => tasks.some(({ running }) => !running));
  }

  /** A whole number from 0 to below a bound, small ones likelier the higher the `bias`. */
  below(bound: number, bias = 1): number {
    return Math.floor(bound * this.chance() ** bias);
  }

  /** When a piece is finished in the plan that stands. */
  finish({ index }: BenchPiece): Minutes {
    return this.player.finishes[index] as number;
  }

  piece(): BenchPiece {
    return this.pieces[this.below(this.pieces.length)] as BenchPiece;
  }

  /** A piece that is late: the more it costs, the likelier; any where none is. */
  latePiece(): BenchPiece {
    let sum = 0;
    let drawn: BenchPiece | null = null;
    for (const piece of this.pieces) {
      const late = piece.weight * Math.max(0, this.finish(piece) - piece.due);
      if (late === 0) continue;
      sum += late;
      if (this.chance() * sum < late) drawn = piece;
    }
    return drawn ?? this.piece();
  }

  /** From minus to plus `most`, the middle likelier. */
  around(most: number): number {
    return most * (this.chance() + this.chance() - 1);
  }

  /** Ranks all tasks by when they start in the plan that stands. */
  rankByStart(): void {
    for (const task of this.player.order) this.recreate.rank[task.index] = task.start;
  }

  /** A style by chance; where only so many may be out, more often than not pieces are begun in turn. */
  style(more: Partial<Style>): Style {
    const inTurn = this.bench.mostOut === null ? null : this.chance() < 0.6;
    return drawStyle(this.chance, { inTurn, ...more });
  }

  /** A limit on pieces in work near the one that did well. */
  drawInWork(): number {
    const { length } = this.pieces;
    if (this.chance() < 0.2) return ANY_NUMBER;
    if (this.inWork < ANY_NUMBER && this.chance() < 0.6) return Math.max(2, this.inWork + this.below(5) - 2);
    return 2 + this.below(Math.min(20, length));
  }
}

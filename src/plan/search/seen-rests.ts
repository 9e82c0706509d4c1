import type { Minutes } from "../../time/instant.ts";
import type { BenchTask } from "./bench.ts";
import { BenchStretches } from "./bench-stretches.ts";
import { NEVER } from "./calendar.ts";
import type { Player } from "./play-order.ts";

/**
 * How long pieces took from each of their tasks on in the plans seen so far: by that a beam tells what it has begun
 * better than by how long each would take alone (learnt evaluation: J. Boyan, A. Moore, Learning evaluation functions to
 * improve optimization by local search, J. Machine Learning Research 1, 2000).
 */
export class SeenRests {
  readonly #player: Player;
  readonly #stretches: BenchStretches;
  /** By task: the fewest minutes seen. */
  readonly #least: Float64Array;

  constructor(player: Player) {
    this.#player = player;
    this.#stretches = new BenchStretches(player.bench);
    this.#least = new Float64Array(player.bench.tasks.length).fill(Number.POSITIVE_INFINITY);
  }

  /** Sees the order that stands. */
  see(): void {
    const { order, kept, finishes } = this.#player;
    for (let place = 0; place < order.length; place++) {
      const task = order[place] as BenchTask;
      const begin = kept.begin(task);
      if (begin >= NEVER) continue;
      const rest = (finishes[task.piece.index] as Minutes) - this.countFrom(begin);
      if (rest < (this.#least[task.index] as number)) this.#least[task.index] = rest;
    }
  }

  /** The fewest minutes in which the piece was finished, from the stretch on in which the task was begun; Infinity: not seen. */
  least({ index }: BenchTask): Minutes {
    return this.#least[index] as number;
  }

  /** From when on the minutes of what begins at a minute count: from the beginning of its stretch. */
  countFrom(minute: Minutes): Minutes {
    return this.#stretches.beginBefore(minute);
  }
}

import type { Arcs } from "./arcs.ts";
import { type Bounds, WHY } from "./bounds.ts";
import type { Clauses } from "./clauses.ts";

/** Stands for "not asked for": below every bound. */
const NOT_ASKED = -(2 ** 31);

/** What a clash teaches: a clause of which at least one literal is true in every schedule. */
export interface Lesson {
  /** The first is false only since the level of the clash; the second since `level`, to which to go back. */
  readonly sides: readonly number[];
  readonly values: readonly number[];
  readonly level: number;
}

/**
 * Finds out why a clash came about, back to the first single cause on its level (the first unique implication point;
 * Marques-Silva and Sakallah, GRASP, 1999). The literals are bounds, made when they are needed, as in lazy clause
 * generation (Ohrimenko, Stuckey and Codish, Constraints 14, 2009; for these projects Schutt, Feydy, Stuckey and
 * Wallace, Journal of Scheduling 16, 2013). A cause is asked for no more than is needed: an arc that lifted a bound by
 * ten where three would do asks three of its tail.
 */
export class Learner {
  readonly #bounds: Bounds;
  readonly #arcs: Arcs;
  readonly #clauses: Clauses;
  /** By entry of the history: the bound that is asked of it. */
  #asked: Int32Array = new Int32Array(0);
  /** Entries asked for, of any level but the beginning. */
  readonly #entries: number[] = [];
  /** How many of them are of the level of the clash, once that is known. */
  #open = 0;
  /** Where the level of the clash begins in the history. */
  #from = 0;
  /** Scratch: the causes found last. */
  readonly #causes: number[] = [];
  /** By variable: how much it had to do with clashes, the later the more. */
  readonly activity: Float64Array;
  #bump = 1;

  constructor(bounds: Bounds, arcs: Arcs, clauses: Clauses) {
    this.#bounds = bounds;
    this.#arcs = arcs;
    this.#clauses = clauses;
    this.activity = new Float64Array(bounds.now.length >> 1);
  }

  /** @returns what the clash in the bounds teaches; null: there is no schedule */
  learn(): Lesson | null {
    this.#begin();
    const level = this.#levelOf(this.#entries.reduce((latest, entry) => Math.max(latest, entry), -1));
    if (level === 0) return null;
    this.#from = this.#bounds.levels[level] as number;
    this.#open = this.#entries.filter((entry) => entry >= this.#from).length;
    const cause = this.#findCause();
    this.#tire();
    return this.#makeLesson(cause);
  }

  /** Asks for the causes of the clash. */
  #begin(): void {
    const { clash, size } = this.#bounds;
    if (this.#asked.length < this.#bounds.side.length) {
      this.#asked = new Int32Array(this.#bounds.side.length).fill(NOT_ASKED);
    }
    this.#entries.length = 0;
    // Until the level is known nothing is counted as open.
    this.#from = size;
    this.#open = 0;
    if (clash.side >= 0) this.#ask(clash.side ^ 1, 1 - clash.value);
    if (clash.why === WHY.CLAUSE) this.#clauses.praise(clash.of);
    this.#explain(size, clash.side, clash.value, clash.why, clash.of);
  }

  /** Goes back through the level of the clash, asking each effect for its causes, until a single one remains. */
  #findCause(): number {
    const bounds = this.#bounds;
    for (let entry = bounds.size - 1; ; entry--) {
      const value = this.#asked[entry] as number;
      if (value === NOT_ASKED) continue;
      if (this.#open === 1) return entry;
      this.#open--;
      this.#asked[entry] = NOT_ASKED;
      if (bounds.why[entry] === WHY.CLAUSE) this.#clauses.praise(bounds.of[entry] as number);
      this.#explain(
        entry,
        bounds.side[entry] as number,
        value,
        bounds.why[entry] as number,
        bounds.of[entry] as number,
      );
    }
  }

  /** Asks for a true literal: it goes to the entry that first made it true. */
  #ask(side: number, value: number): void {
    const bounds = this.#bounds;
    const entry = bounds.firstTrue(side, value);
    // True from the beginning, whatever is decided.
    if (bounds.levels.length < 2 || entry < (bounds.levels[1] as number)) return;
    const asked = this.#asked[entry] as number;
    if (asked === NOT_ASKED) {
      this.#entries.push(entry);
      if (entry >= this.#from) this.#open++;
      const variable = side >> 1;
      this.activity[variable] = (this.activity[variable] as number) + this.#bump;
    }
    if (asked < value) this.#asked[entry] = value;
  }

  /** Asks for the causes that made `[side >= value]` true at an entry of the history. */
  #explain(entry: number, side: number, value: number, why: number, of: number): void {
    this.#findCauses(entry, side, value, why, of);
    const causes = this.#causes;
    for (let place = 0; place < causes.length; place += 2) {
      this.#ask(causes[place] as number, causes[place + 1] as number);
    }
  }

  /** Lists the literals, as pairs of side and value, from which another followed. */
  #findCauses(entry: number, side: number, value: number, why: number, of: number): void {
    const causes = this.#causes;
    causes.length = 0;
    const arcs = this.#arcs;
    if (why === WHY.ARC) {
      causes.push(arcs.from[of] as number, value - (arcs.least[of] as number));
      const condition = arcs.conditionSide[of] as number;
      if (condition >= 0) causes.push(condition, arcs.conditionValue[of] as number);
    } else if (why === WHY.CONDITION) {
      const tail = arcs.from[of] as number;
      const pushed = this.#bounds.boundBefore(tail, entry);
      causes.push(tail, pushed, (arcs.to[of] as number) ^ 1, 1 - pushed - (arcs.least[of] as number));
    } else if (why === WHY.CLAUSE) {
      // All literals of the clause but the one that it made true were false.
      const { store } = this.#clauses;
      const first = this.#clauses.literals(of);
      const end = first + 2 * this.#clauses.length(of);
      for (let place = first; place < end; place += 2) {
        const other = store[place] as number;
        if (other !== side) causes.push(other ^ 1, 1 - (store[place + 1] as number));
      }
    } else if (why === WHY.NOTED) {
      const { notes } = this.#bounds;
      const end = of + 1 + 2 * (notes[of] as number);
      for (let place = of + 1; place < end; place++) causes.push(notes[place] as number);
    }
  }

  /** Makes the clause: not all of what is still asked for can be true. */
  #makeLesson(cause: number): Lesson {
    const bounds = this.#bounds;
    const rest = this.#entries
      .filter((entry) => entry < this.#from && !this.#follows(entry))
      .sort((a, b) => b - a);
    const strongest = new Map<number, number>([[bounds.side[cause] as number, cause]]);
    for (const entry of rest) {
      // The latest entry of a side says most of it.
      const side = bounds.side[entry] as number;
      if (!strongest.has(side)) strongest.set(side, entry);
    }
    const kept = [...strongest.values()];
    const lesson = {
      sides: kept.map((entry) => (bounds.side[entry] as number) ^ 1),
      values: kept.map((entry) => 1 - (this.#asked[entry] as number)),
      level: kept.length < 2 ? 0 : this.#levelOf(kept[1] as number),
    };
    for (const entry of this.#entries) this.#asked[entry] = NOT_ASKED;
    return lesson;
  }

  /** Whether an asked entry follows from others that are asked: then it adds nothing to the clause. */
  #follows(entry: number): boolean {
    const { side, why, of } = this.#bounds;
    if (why[entry] === WHY.DECIDED) return false;
    this.#findCauses(
      entry,
      side[entry] as number,
      this.#asked[entry] as number,
      why[entry] as number,
      of[entry] as number,
    );
    const causes = this.#causes;
    for (let place = 0; place < causes.length; place += 2) {
      if (!this.#isCovered(causes[place] as number, causes[place + 1] as number)) return false;
    }
    return true;
  }

  /** Whether a literal is true from the beginning or asked for already. */
  #isCovered(side: number, value: number): boolean {
    const entry = this.#bounds.firstTrue(side, value);
    return entry < (this.#bounds.levels[1] as number) || (this.#asked[entry] as number) >= value;
  }

  #levelOf(entry: number): number {
    const { levels } = this.#bounds;
    let level = levels.length - 1;
    while (level > 0 && (levels[level] as number) > entry) level--;
    return level;
  }

  /** What came up in clashes lately counts for more. */
  #tire(): void {
    this.#bump /= 0.95;
    if (this.#bump < 1e100) return;
    this.#bump *= 1e-100;
    for (const [variable, activity] of this.activity.entries()) this.activity[variable] = activity * 1e-100;
  }
}

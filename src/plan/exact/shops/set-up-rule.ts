import type { Literal } from "../conflict/arcs.ts";
import { type Bounds, WHY } from "../conflict/bounds.ts";
import type { Rule } from "../conflict/model.ts";

/** A task that needs something set up at a station. */
export interface SetUpTask {
  /** Tasks with the same number share it. */
  readonly setUp: number;
  readonly start: number;
  readonly duration: number;
  /** The variable that is 1 when it is set up directly before this task. */
  readonly made: number;
}

/** How long what one task leaves behind is good for another. */
export type Keeping =
  | { readonly way: "load" }
  /** For a start so long after the end of a use. */
  | { readonly way: "heat"; readonly minutes: number }
  /** For an end so long after the start of the task for which it was made. */
  | { readonly way: "mix"; readonly minutes: number };

/**
 * What a task needs must be set up for it unless an earlier task left it standing. When no other task can have left
 * it, the rule says so; what sets it up late is for the caller's model to reckon.
 */
export class SetUpRule implements Rule {
  readonly variables: readonly number[];
  readonly #tasks: readonly SetUpTask[];
  readonly #keeps: ReadonlyMap<number, Keeping>;
  /** `before(a, b)`: true when task a comes before task b; null: always, undefined: never. */
  readonly #before: (one: number, other: number) => Literal | null | undefined;
  /** What stands at the beginning: this set-up, for good as far as the rule knows; "any": whatever comes first needs. */
  readonly #standing: number | "any" | null;

  /** @param before by places in `tasks` */
  constructor(
    tasks: readonly SetUpTask[],
    keeps: ReadonlyMap<number, Keeping>,
    standing: number | "any" | null,
    before: (one: number, other: number) => Literal | null | undefined,
  ) {
    this.#tasks = tasks;
    this.#keeps = keeps;
    this.#standing = standing;
    this.#before = before;
    const orders = tasks.flatMap((_, one) =>
      tasks.flatMap((__, other) => {
        const order = one === other ? null : before(one, other);
        return order ? [order.side >> 1] : [];
      }),
    );
    this.variables = [...orders, ...tasks.flatMap(({ start, made }) => [start, made])];
  }

  propagate(bounds: Bounds): boolean {
    for (const [place, { made }] of this.#tasks.entries()) {
      if (bounds.isTrue(2 * made, 1)) continue;
      const reasons = this.#whyMade(bounds, place);
      if (reasons === null) continue;
      const note = bounds.beginNote();
      for (const { side, value } of reasons) bounds.note(note, side, value);
      if (!bounds.raise(2 * made, 1, WHY.NOTED, note)) return false;
    }
    return true;
  }

  /** @returns why nothing can stand for a task; null: something may */
  #whyMade(bounds: Bounds, place: number): Literal[] | null {
    const own = this.#tasks[place] as SetUpTask;
    const reasons: Literal[] = [];
    if (this.#standing === own.setUp) return null;
    if (this.#standing === "any") {
      const earlier = this.#someBefore(bounds, place);
      if (earlier === null) return null;
      reasons.push(...earlier);
    }
    for (const [other, { setUp }] of this.#tasks.entries()) {
      if (other === place || setUp !== own.setUp) continue;
      const why = this.#whyNot(bounds, other, place);
      if (why === null) return null;
      reasons.push(...why);
    }
    return reasons;
  }

  /** Why a task is not the first; null: it may be. */
  #someBefore(bounds: Bounds, place: number): Literal[] | null {
    for (const other of this.#tasks.keys()) {
      const before = other === place ? undefined : this.#holds(bounds, other, place);
      if (before !== undefined) return before;
    }
    return null;
  }

  /** Why `from` cannot have left standing what `to` needs; null: it may have. */
  #whyNot(bounds: Bounds, from: number, to: number): Literal[] | null {
    const after = this.#holds(bounds, to, from);
    if (after !== undefined) return after;
    const { setUp } = this.#tasks[to] as SetUpTask;
    return this.#whyGone(bounds, from, to, setUp) ?? this.#whyDisplaced(bounds, from, to, setUp);
  }

  /** Why what was left standing has cooled or set. */
  #whyGone(bounds: Bounds, from: number, to: number, setUp: number): Literal[] | null {
    const keeps = this.#keeps.get(setUp);
    const one = this.#tasks[from] as SetUpTask;
    const other = this.#tasks[to] as SetUpTask;
    if (keeps === undefined || keeps.way === "load") return null;
    if (keeps.way === "mix" && bounds.isFalse(2 * one.made, 1)) return [{ side: 2 * one.made + 1, value: 0 }];
    // The other starts more than `reach` after the one.
    const reach = keeps.minutes + (keeps.way === "heat" ? one.duration : -other.duration);
    const latest = -(bounds.now[2 * one.start + 1] as number);
    if ((bounds.now[2 * other.start] as number) <= latest + reach) return null;
    return [
      { side: 2 * other.start, value: latest + reach + 1 },
      { side: 2 * one.start + 1, value: -latest },
    ];
  }

  /** Why something else was set up in between. */
  #whyDisplaced(bounds: Bounds, from: number, to: number, setUp: number): Literal[] | null {
    for (const [between, task] of this.#tasks.entries()) {
      if (task.setUp === setUp) continue;
      const after = this.#holds(bounds, from, between);
      const before = after === undefined ? undefined : this.#holds(bounds, between, to);
      if (after !== undefined && before !== undefined) return [...after, ...before];
    }
    return null;
  }

  /** The literal that says that one comes before another, none when it always does; undefined: that is not known. */
  #holds(bounds: Bounds, one: number, other: number): Literal[] | undefined {
    const literal = this.#before(one, other);
    if (literal === undefined) return undefined;
    if (literal === null) return [];
    return bounds.isTrue(literal.side, literal.value) ? [literal] : undefined;
  }
}

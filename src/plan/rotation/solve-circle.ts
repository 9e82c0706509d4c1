import type { Minutes } from "../../time/instant.ts";
import type { Circle } from "./circle.ts";
import { type Choice, findConflict, type Placing, placeEarliest } from "./conflicts.ts";
import { Relaxation } from "./relaxation.ts";

export interface CircleAnswer {
  /** `optimal` and `infeasible` are proven; `feasible` and `unknown`: stopped before. */
  readonly status: "optimal" | "infeasible" | "feasible" | "unknown";
  /** By task, its start; null: none was found. */
  readonly starts: readonly Minutes[] | null;
  /** The sum of the pieces' spans. */
  readonly span: Minutes | null;
  /** No rotation has less. */
  readonly bound: Minutes;
  readonly nodes: number;
}

export interface CircleAsk {
  /** Looked at between nodes; true: give back what there is. */
  readonly stop: () => boolean;
  /** Only the number of whole periods in a span counts: how many pieces are out. */
  readonly wholeTurns?: boolean;
}

/** The rotation of least span, by branch and bound. */
export function solveCircle(circle: Circle, ask: CircleAsk): CircleAnswer {
  const search = new Search(circle, ask);
  return search.run();
}

class Search {
  readonly #circle: Circle;
  readonly #ask: CircleAsk;
  #nodes = 0;
  #best: Minutes;
  #starts: readonly Minutes[] | null = null;
  #stopped = false;

  constructor(circle: Circle, ask: CircleAsk) {
    this.#circle = circle;
    this.#ask = ask;
    this.#best =
      circle.lags.reduce((sum, { least }) => sum + Math.abs(least) + 2 * circle.period, circle.period) *
      circle.pieces.length;
  }

  run(): CircleAnswer {
    const root = begin(this.#circle);
    const bound = root === null ? 0 : sum(spans(root));
    if (root !== null) this.#visit(root);
    const span = this.#starts === null ? null : this.#best;
    if (this.#stopped) return { status: span === null ? "unknown" : "feasible", starts: this.#starts, span, bound, nodes: this.#nodes };
    return {
      status: span === null ? "infeasible" : "optimal",
      starts: this.#starts,
      span,
      bound: span ?? bound,
      nodes: this.#nodes,
    };
  }

  #visit(relaxation: Relaxation): void {
    this.#nodes++;
    if (this.#stopped || this.#ask.stop()) {
      this.#stopped = true;
      return;
    }
    let conflict: readonly Choice[] | null = null;
    do {
      if (!this.#bound(relaxation)) return;
      conflict = this.#tryLeast(relaxation);
      if (conflict !== null && conflict.length === 0) return;
      if (conflict === null) {
        const placing = placeEarliest(relaxation);
        conflict = findConflict(relaxation, placing);
        if (conflict === null) this.#keep(placing);
      }
    } while (conflict === null);
    for (const choice of conflict) {
      const child = relaxation.copy();
      if (choice(child)) this.#visit(child);
      if (this.#stopped) return;
    }
  }

  /** Holds the spans to less than the best found. */
  #bound(relaxation: Relaxation): boolean {
    const { period, pieces } = this.#circle;
    const most = this.#ask.wholeTurns ? (Math.ceil(this.#best / period) - 1) * period : this.#best - 1;
    for (;;) {
      if (!relaxation.propagate()) return false;
      const least = spans(relaxation);
      const all = sum(least);
      if (all > most) return false;
      let changed = false;
      for (const [index, piece] of pieces.entries()) {
        const own = most - all + (least[index] as number);
        const held = holdSpan(relaxation, piece, own);
        if (held === null) return false;
        changed ||= held;
      }
      if (!changed) return true;
    }
  }

  /** Tries the least spans there can be. @returns null: contradicts; []: found, and nothing below is better */
  #tryLeast(relaxation: Relaxation): readonly Choice[] | null {
    const trial = relaxation.copy();
    const least = spans(relaxation);
    for (const [index, piece] of this.#circle.pieces.entries()) {
      if (holdSpan(trial, piece, least[index] as number) === null) return null;
    }
    if (!trial.propagate()) return null;
    const placing = placeEarliest(trial);
    const conflict = findConflict(trial, placing);
    if (conflict !== null) return conflict;
    this.#keep(placing);
    return [];
  }

  #keep({ minutes, turns }: Placing): void {
    const { period, pieces } = this.#circle;
    const starts = [...minutes].map((minute, task) => minute + (turns[task] as number) * period);
    this.#starts = starts;
    this.#best = pieces.reduce((all, { begins, ends }) => {
      const first = Math.min(...begins.map((task) => starts[task] as number));
      return all + Math.max(...ends.map(({ task, minutes }) => (starts[task] as number) + minutes)) - first;
    }, 0);
  }
}

const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);

/** The least span of each piece. */
function spans(relaxation: Relaxation): number[] {
  return relaxation.circle.pieces.map(({ begins, ends }) =>
    Math.max(
      ...begins.flatMap((begin) =>
        ends.map(({ task, minutes }) => relaxation.starts.least(begin, task) + minutes),
      ),
    ),
  );
}

/** @returns null: no solution is left; else whether anything changed */
function holdSpan(
  relaxation: Relaxation,
  { begins, ends }: Circle["pieces"][number],
  most: Minutes,
): boolean | null {
  let changed = false;
  for (const begin of begins) {
    for (const { task, minutes } of ends) {
      if (relaxation.starts.least(task, begin) >= minutes - most) continue;
      if (!relaxation.raiseStart(task, begin, minutes - most)) return null;
      changed = true;
    }
  }
  return changed;
}

/** The whole problem as a relaxation; null: it contradicts itself. */
function begin(circle: Circle): Relaxation | null {
  const relaxation = new Relaxation(circle);
  const { size } = relaxation;
  for (const [index, task] of circle.tasks.entries()) {
    const from = task.fixed ?? 0;
    const until = task.fixed ?? circle.period - 1;
    if (!relaxation.raiseMinute(size, index, from) || !relaxation.raiseMinute(index, size, -until)) return null;
    const self = relaxation.apart(index, index);
    if (self !== null && self > circle.period) return null;
  }
  for (const { from, to, least, most } of circle.lags) {
    if (!relaxation.raiseStart(from, to, least)) return null;
    if (most !== null && !relaxation.raiseStart(to, from, -most)) return null;
  }
  for (let task = 0; task < size; task++) {
    const setUp = circle.tasks[task]?.setUp ?? null;
    if (setUp === null) {
      relaxation.setUps[task] = 2;
      continue;
    }
    const mine = circle.setUps[setUp];
    const users = circle.tasks.flatMap((other, index) => other.setUp !== null && circle.setUps[other.setUp]?.station === mine?.station ? [index] : []);
    const alike = users.filter((user) => circle.tasks[user]?.setUp === setUp);
    if (mine?.keeps.way === "load" && mine.putAway === 0 && alike.length === users.length) relaxation.setUps[task] = 2;
    else if (alike.length === 1 && (mine?.putAway ?? 0) > 0) relaxation.makeSetUp(task);
    else if (alike.length === 1 && users.length > 1) relaxation.makeSetUp(task);
  }
  for (let task = 0; task < size; task++) relaxation.touchAll(task);
  return relaxation;
}

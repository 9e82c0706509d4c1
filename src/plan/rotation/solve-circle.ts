import type { Minutes } from "../../time/instant.ts";
import { beginRelaxation } from "./begin-relaxation.ts";
import type { Circle } from "./circle.ts";
import { findEdges } from "./edge-finding.ts";
import { type Branching, type Choice, findConflict } from "./find-conflict.ts";
import { fitsSessions } from "./hands-load.ts";
import { MADE } from "./known-set-up.ts";
import { findOrderConflict } from "./order-conflict.ts";
import { type Placing, placeEarliest } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";
import { fitsRoom } from "./room-load.ts";
import { holdSpan, leastSpans, spanOf } from "./spans.ts";

export interface CircleAnswer {
  /** `optimal` and `infeasible` are proven; `feasible` and `unknown`: stopped before. */
  readonly status: "optimal" | "infeasible" | "feasible" | "unknown";
  /** By task, its start; null: none was found. */
  readonly starts: readonly Minutes[] | null;
  /** By task, whether its set-up is made directly before it. */
  readonly made: readonly boolean[];
  /** The sum of the pieces' spans. */
  readonly span: Minutes | null;
  /** No rotation has less. */
  readonly bound: Minutes;
  readonly nodes: number;
}

export interface CircleAsk {
  /** Looked at between nodes; true: give back what there is. */
  readonly stop: (nodes: number) => boolean;
  /** Only the number of whole periods in a span counts: how many pieces are out. */
  readonly wholePeriods?: boolean;
  /** The first rotation found is as good as any. */
  readonly anySpan?: boolean;
  /** Few nodes are given: what is found first counts, and is not looked for near the bound alone. */
  readonly hasty?: boolean;
  /** Spans of this sum and more are of no interest. */
  readonly below?: Minutes;
}

/** Minutes over the bound that are tried one after the other, and nodes for each branching at each. */
const WIDTHS: readonly Minutes[] = [30, 120, 480, 1_440];
const NODES_NEAR = 150;

/** Nodes that the first branching may take before the other has its turn; doubled each time. */
const FIRST_TURN = 2_000;

/**
 * The rotation of least span, by branch and bound. Which branching proves sooner differs from one process to the next,
 * so the two take turns, each with twice the nodes of the turn before, and share the best found.
 */
export function solveCircle(circle: Circle, ask: CircleAsk): CircleAnswer {
  const begun = beginRelaxation(circle);
  const root = begun !== null && conclude(begun) ? begun : null;
  const search = new Search(circle, ask);
  const bound = root === null ? 0 : searchNear(search, root, ask);
  let branching: Branching = "turns first";
  let ended = root === null;
  for (let nodes = FIRST_TURN; !ended && !search.stopped; nodes *= 2) {
    ended = search.run(root as Relaxation, branching, nodes);
    branching = branching === "turns first" ? "orders first" : "turns first";
  }
  return { ...search.found(ended), bound: ended ? (search.span ?? bound) : bound };
}

/**
 * Held to little more than the least that the networks leave, the search goes straight at what is good, or soon proves
 * that so little is not to be had (destructive bounds: Klein and Scholl, Computing lower bounds by destructive
 * improvement, European Journal of Operational Research 112(2), 1999).
 *
 * @returns a sum of spans that no rotation goes below
 */
function searchNear(
  search: Search,
  root: Relaxation,
  { anySpan, wholePeriods, hasty, below }: CircleAsk,
): Minutes {
  let bound = leastSpans(root).reduce((sum, span) => sum + span, 0);
  const isNear = anySpan !== true && wholePeriods !== true && hasty !== true;
  if (!isNear || root.longest > root.circle.period) return bound;
  for (const width of WIDTHS) {
    const most = bound + width;
    if (search.span !== null || search.stopped || most >= (below ?? Infinity)) break;
    for (const branching of ["turns first", "orders first"] as const) {
      if (search.span !== null || !search.runBelow(root, branching, most)) continue;
      if (search.span === null) bound = most;
      break;
    }
  }
  return bound;
}

class Search {
  stopped = false;
  span: Minutes | null = null;
  readonly #circle: Circle;
  readonly #ask: CircleAsk;
  #nodes = 0;
  #until = 0;
  #branching: Branching = "turns first";
  #below: Minutes;
  #starts: readonly Minutes[] | null = null;
  #made: readonly boolean[] = [];

  constructor(circle: Circle, ask: CircleAsk) {
    this.#circle = circle;
    this.#ask = ask;
    this.#below = ask.below ?? longestSpan(circle) + 1;
  }

  /** Searches so many nodes. @returns whether nothing is left to search */
  run(root: Relaxation, branching: Branching, nodes: number): boolean {
    this.#branching = branching;
    this.#until = this.#nodes + nodes;
    return this.#visit(root.copy());
  }

  /** The same for spans of less than `most` alone. */
  runBelow(root: Relaxation, branching: Branching, most: Minutes): boolean {
    const before = this.#below;
    this.#below = Math.min(before, most);
    const ended = this.run(root, branching, NODES_NEAR);
    if (this.span === null) this.#below = before;
    return ended;
  }

  found(ended: boolean): Pick<CircleAnswer, "status" | "starts" | "made" | "span" | "nodes"> {
    const { span } = this;
    const status = span === null ? (ended ? "infeasible" : "unknown") : ended ? "optimal" : "feasible";
    return { status, starts: this.#starts, made: this.#made, span, nodes: this.#nodes };
  }

  /** Whatever is below a node, which is then of no more use. @returns false: the search was broken off */
  #visit(relaxation: Relaxation): boolean {
    if (this.#isOver()) return false;
    let conflict: readonly Choice[] | null = null;
    while (conflict === null) {
      if (!this.#holdBelow(relaxation)) return true;
      const trial = this.#ask.anySpan === true ? null : tryLeast(relaxation);
      const placing = placeEarliest(trial ?? relaxation);
      conflict = findConflict(relaxation, trial ?? relaxation, placing, this.#branching);
      if (conflict === null && relaxation.longest > this.#circle.period) return this.#breakOff();
      if (conflict === null) this.#keep(trial ?? relaxation, placing);
      if (conflict === null && trial !== null) return true;
      // The least spans do not go together: what is still open is settled one by one.
      conflict ??= findOrderConflict(relaxation, null);
      if (conflict === null && this.#isOver()) return false;
    }
    for (const [number, choose] of conflict.entries()) {
      // After the last choice nothing is asked of the node itself.
      const child = number < conflict.length - 1 ? relaxation.copy() : relaxation;
      if (choose(child) && !this.#visit(child)) return false;
    }
    return true;
  }

  #isOver(): boolean {
    this.#nodes++;
    this.stopped ||= this.#ask.stop(this.#nodes);
    return this.stopped || this.#nodes > this.#until;
  }

  /** Of a range of periods it could not be shown that none has a rotation. */
  #breakOff(): false {
    this.stopped = true;
    return false;
  }

  /** Holds the spans to less than the best found, and draws all conclusions. @returns false: nothing is left */
  #holdBelow(relaxation: Relaxation): boolean {
    const { period, pieces } = this.#circle;
    const most = this.#ask.wholePeriods ? (Math.ceil(this.#below / period) - 1) * period : this.#below - 1;
    for (;;) {
      if (!conclude(relaxation)) return false;
      const least = leastSpans(relaxation);
      const spare = most - least.reduce((sum, span) => sum + span, 0);
      if (spare < 0) return false;
      let raised = false;
      for (const [index, piece] of pieces.entries()) {
        const held = holdSpan(relaxation, piece, spare + (least[index] as number));
        if (held === null) return false;
        raised ||= held;
      }
      if (!raised) return true;
    }
  }

  #keep({ setUps }: Relaxation, { minutes, turns }: Placing): void {
    const { period, pieces } = this.#circle;
    const starts = [...minutes].map((minute, task) => minute + (turns[task] as number) * period);
    this.#starts = starts;
    this.#made = [...setUps].map((setUp) => setUp === MADE);
    this.span = pieces.reduce((sum, piece) => sum + spanOf(piece, starts), 0);
    this.#below = this.#ask.anySpan === true ? 0 : this.span;
  }
}

/** Draws all conclusions, those about the load of hands and hooks too. @returns false: no solution is left */
function conclude(relaxation: Relaxation): boolean {
  do {
    if (!relaxation.propagate() || !fitsSessions(relaxation) || !fitsRoom(relaxation)) return false;
    if (relaxation.circle.hands === 1 && !findEdges(relaxation)) return false;
  } while (!relaxation.settled);
  return true;
}

/** The relaxation with every span at its least; null: they cannot all be. */
function tryLeast(relaxation: Relaxation): Relaxation | null {
  const trial = relaxation.copy();
  const least = leastSpans(relaxation);
  for (const [index, piece] of relaxation.circle.pieces.entries()) {
    if (holdSpan(trial, piece, least[index] as number) === null) return null;
  }
  return conclude(trial) ? trial : null;
}

/**
 * A span no best rotation exceeds: along the longest chain of waits each goes at most two periods beyond its least,
 * for turns are drawn up as tight as the waits let them.
 */
function longestSpan({ lags, pieces, tasks, ...circle }: Circle): Minutes {
  const period = circle.longestPeriod ?? circle.period;
  const waits = lags.reduce((sum, { least }) => sum + Math.abs(least) + 2 * period, period);
  const ends = pieces.flatMap((piece) => piece.ends.map(({ minutes }) => minutes));
  return (waits + tasks.length + Math.max(0, ...ends)) * pieces.length;
}

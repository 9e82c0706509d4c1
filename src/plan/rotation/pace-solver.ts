import type { ProcessDefinition } from "../../process/definition.ts";
import type { Minutes } from "../../time/instant.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { ShopFacts } from "../plan-shop.ts";
import { type BenchRound, repeatRound } from "./bench-round.ts";
import type { Circle } from "./circle.ts";
import { circleOfProblem, type ProblemCircle, preparedTasks } from "./circle-of-problem.ts";
import { dryThroughAfter } from "./dry-through.ts";
import { makeTimetable } from "./make-timetable.ts";
import { betterPattern, PacePatterns } from "./pace-patterns.ts";
import { mostOut, type Placed, placedIn } from "./pattern/placed.ts";
import type { Change, Impossible, Looking, Minder, Pace, Timetable } from "./rotation-answer.ts";
import { rotationProblem } from "./rotation-problem.ts";
import type { SingleChange } from "./single-changes.ts";
import { solveAlone } from "./solve-alone.ts";
import type { CircleAnswer } from "./solve-circle.ts";
import { solvePieces } from "./solve-pieces.ts";
import { leastWork, whyNot } from "./why-not.ts";

const DAY: Minutes = 1_440;
/** In a period of a day a piece is much in its own way: two are put in by the exact search, not as a pattern. */
const TWO_A_DAY = { pieces: 2, days: 1 };

/** How hard is looked for a row of the table, and for the timetable that is shown; what is known is only looked up. */
const EFFORTS = {
  row: { nodes: 900, rounds: { first: 80, fewer: 25, shorten: 0 } },
  whole: { nodes: 1_800, rounds: { first: 120, fewer: 80, shorten: 80 } },
  known: { nodes: 0, rounds: { first: 0, fewer: 0, shorten: 0 } },
};
/** Nodes for one piece alone: far more than its proof takes as a rule. */
const NODES_ALONE = 10_000;

export type Effort = keyof typeof EFFORTS;

type Otherwise = Pick<Change, "span" | "out" | "proven">;

/** One piece a period, with the tasks that are prepared each time. */
interface Alone {
  readonly answer: CircleAnswer;
  readonly prepared: readonly number[];
}

/** Solves paces of one process at one bench; the same calls in the same order give the same answers. */
export class PaceSolver {
  readonly round: BenchRound;
  readonly #facts: ShopFacts;
  readonly #definition: ProcessDefinition;
  readonly #isOver: () => boolean;
  readonly #onLook: (looking: Looking) => void;
  readonly #known = new Map<string, Timetable | Impossible>();
  /** By number of pieces. */
  readonly #problems = new Map<number, ShopProblem>();
  /** Both by days of the period. */
  readonly #alone = new Map<number, Alone>();
  readonly #patterns = new Map<number, PacePatterns>();
  /** By pace. */
  readonly #best = new Map<string, CircleAnswer>();

  constructor(
    facts: ShopFacts,
    definition: ProcessDefinition,
    round: BenchRound,
    { isOver, onLook = () => {} }: Minder,
  ) {
    this.round = round;
    this.#facts = facts;
    this.#definition = definition;
    this.#isOver = isOver;
    this.#onLook = onLook;
  }

  /** @param pace one whose days are whole rounds of the bench */
  solve(pace: Pace, effort: Effort): Timetable | Impossible {
    const key = `${keyOf(pace)} ${effort}`;
    const known = this.#known.get(key);
    // A pattern may have been bettered since by what was found for more pieces.
    const mayBeBetter = known?.is === "timetable" && pace.pieces > 1 && pace.days > TWO_A_DAY.days;
    if (known !== undefined && !mayBeBetter) return known;
    const found = this.#solve(pace, known === undefined ? effort : "known");
    this.#known.set(key, found);
    return found;
  }

  /**
   * The same pace with one thing otherwise: of one piece solved exactly, of several as a short search betters what is
   * known. Null: it cannot be, or was not found.
   */
  solveIf(pace: Pace, { change, bend }: Pick<SingleChange, "change" | "bend">): Otherwise | null {
    const { pieces, days } = pace;
    this.#onLook({ at: "change", pace });
    const problem = change(this.problem(1).problem);
    const prepared = new Set(this.#alone.get(days)?.prepared);
    const circle = bend(circleOfProblem(problem, days * DAY, this.#sessions(days), prepared).circle);
    const open = circle.sessions.reduce((sum, { opens, closes }) => sum + closes - opens, 0);
    if (leastWork(problem, pieces) > open * circle.hands) return null;
    const known = pieces === 1 ? undefined : this.#best.get(keyOf(pace));
    const several = known === undefined ? null : betterPattern(circle, pieces, known, this.#isOver);
    const answer = pieces === 1 ? solveAlone(circle, this.#stopAfter(NODES_ALONE)) : several;
    if (answer === null || answer.span === null) return null;
    const out = mostOut(placedIn(circle, answer), circle.period);
    return { span: answer.span, out, proven: answer.status === "optimal" };
  }

  problem(pieces: number): ShopProblem {
    const known = this.#problems.get(pieces) ?? rotationProblem(this.#facts, this.#definition, pieces);
    this.#problems.set(pieces, known);
    return known;
  }

  #solve(pace: Pace, effort: Effort): Timetable | Impossible {
    const { pieces, days } = pace;
    this.#onLook({ at: "pace", pace });
    const why = whyNot(this.problem(1).problem, this.round, pace);
    if (why.because !== "together") return { is: "impossible", why };
    // A piece that can be begun each day can be begun on some days only.
    const daily = this.#alone.get(1);
    const known = this.#alone.get(days) ?? (pieces > 1 && daily?.answer.starts ? daily : undefined);
    const alone = known ?? this.#solveAlone(days);
    if (alone.answer.status === "infeasible") return { is: "impossible", why };
    const answer = pieces === 1 ? alone.answer : this.#solveSeveral(pace, alone, effort);
    this.#best.set(keyOf(pace), answer);
    if (answer.starts === null) return { is: "not found", why: { because: "time was over" } };
    const built = this.#circleOf(pace, alone.prepared);
    const dryThrough = (step: string) => dryThroughAfter(this.#facts, this.#definition, step);
    const leastOut = pieces === 1 ? 1 : this.#patternsFor(days, alone).fewestOut(pieces);
    const { starts } = answer;
    const solved = { made: this.problem(pieces), built, answer, starts, leastOut, dryThrough };
    return makeTimetable(solved, this.round, pace);
  }

  /** Each of several pieces is prepared as one alone at this length of the period. */
  #solveSeveral({ pieces, days }: Pace, alone: Alone, effort: Effort): CircleAnswer {
    const { nodes, rounds } = EFFORTS[effort];
    const circleOf = (count: number): ProblemCircle =>
      this.#circleOf({ pieces: count, days }, alone.prepared);
    const two = pieces === TWO_A_DAY.pieces && days === TWO_A_DAY.days;
    if (two) return solvePieces({ circleOf, pieces, isOver: this.#countDown(nodes) });
    const patterns = this.#patternsFor(days, alone);
    if (pieces <= days) patterns.offer(this.#dailyOnEnd(days, alone));
    return patterns.solve(pieces, rounds, this.#isOver);
  }

  #patternsFor(days: number, { answer, prepared }: Alone): PacePatterns {
    const known = this.#patterns.get(days);
    const patterns = known ?? new PacePatterns(this.#circleOf({ pieces: 1, days }, prepared).circle, answer);
    this.#patterns.set(days, patterns);
    return patterns;
  }

  /** One a day on end, where that is known: some of its pieces are a pattern of fewer. */
  #dailyOnEnd(days: number, { prepared }: Alone): Placed[] {
    const daily = this.#alone.get(1);
    if (daily === undefined || daily.prepared.join() !== prepared.join()) return [];
    const { circle } = this.#circleOf({ pieces: 1, days }, prepared);
    return placedIn(circle, daily.answer).flatMap((one) => repeated(one, days));
  }

  /** Without preparation where that can be; else with as few steps prepared each time as there must be. */
  #solveAlone(days: number): Alone {
    const known = this.#alone.get(days);
    if (known !== undefined) return known;
    const choices = preparedTasks(this.problem(1).problem);
    let found = this.#solveWith(days, []);
    for (let count = 1; found.answer.status === "infeasible" && count <= choices.length; count++) {
      for (const prepared of subsets(choices, count)) {
        const other = this.#solveWith(days, prepared);
        if (other.answer.status === "infeasible") continue;
        if ((other.answer.span ?? Infinity) < (found.answer.span ?? Infinity)) found = other;
      }
    }
    this.#alone.set(days, found);
    return found;
  }

  #solveWith(days: number, prepared: readonly number[]): Alone {
    const { circle } = this.#circleOf({ pieces: 1, days }, prepared);
    return { answer: solveAlone(circle, this.#stopAfter(NODES_ALONE)), prepared };
  }

  #circleOf({ pieces, days }: Pace, prepared: readonly number[]): ProblemCircle {
    const ofOne = this.problem(1).problem.tasks.length;
    const all = Array.from({ length: pieces }, (_, piece) => prepared.map((task) => task + piece * ofOne));
    return circleOfProblem(
      this.problem(pieces).problem,
      days * DAY,
      this.#sessions(days),
      new Set(all.flat()),
    );
  }

  #sessions(days: number): Circle["sessions"] {
    return repeatRound(this.round, (days * DAY) / this.round.minutes);
  }

  /** Over once it was asked so many times. */
  #countDown(times: number): () => boolean {
    let left = times;
    return () => left-- <= 0 || this.#isOver();
  }

  #stopAfter(most: number): (nodes: number) => boolean {
    return (nodes) => nodes > most || this.#isOver();
  }
}

/** The same piece begun each day anew. */
function repeated({ starts, made, from, until }: Placed, days: number): Placed[] {
  return Array.from({ length: days }, (_, day) => ({
    starts: starts.map((start) => start + day * DAY),
    made,
    from: from + day * DAY,
    until: until + day * DAY,
  }));
}

const keyOf = ({ pieces, days }: Pace): string => `${pieces}/${days}`;

/** All ways to take so many things of a list. */
function subsets(list: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return list.flatMap((first, index) =>
    subsets(list.slice(index + 1), count - 1).map((others) => [first, ...others]),
  );
}

import type { ProcessDefinition } from "../../process/definition.ts";
import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { ShopFacts } from "../plan-shop.ts";
import type { Problem } from "../problem.ts";
import { type BenchRound, openMinutes, repeatRound } from "./bench-round.ts";
import type { Circle } from "./circle.ts";
import { circleOfProblem, type ProblemCircle, preparedTasks } from "./circle-of-problem.ts";
import { makeTimetable } from "./make-timetable.ts";
import type { Impossible, Pace, Timetable } from "./rotation-answer.ts";
import { rotationProblem } from "./rotation-problem.ts";
import { solveCircle } from "./solve-circle.ts";
import { solvePieces } from "./solve-pieces.ts";

const DAY: Minutes = 1_440;

/** Solves paces of one process at one bench, each once. */
export class PaceSolver {
  readonly round: BenchRound;
  readonly #facts: ShopFacts;
  readonly #definition: ProcessDefinition;
  readonly #isOver: () => boolean;
  #left = Number.POSITIVE_INFINITY;
  readonly #known = new Map<string, Timetable | Impossible>();

  constructor(facts: ShopFacts, definition: ProcessDefinition, round: BenchRound, isOver: () => boolean) {
    this.round = round;
    this.#facts = facts;
    this.#definition = definition;
    this.#isOver = () => this.#left-- <= 0 || isOver();
  }

  /**
   * @param pace one whose days are whole rounds of the bench
   * @param nodes the search has so many at most, where it is not solved already
   */
  solve(pace: Pace, nodes = Number.POSITIVE_INFINITY): Timetable | Impossible {
    const key = `${pace.pieces}/${pace.days}`;
    const known = this.#known.get(key);
    // What was only found in few nodes may be bettered with more.
    const settled = known?.is === "impossible" || (known?.is === "timetable" && known.proven);
    if (known !== undefined && (settled || Number.isFinite(nodes))) return known;
    this.#left = nodes;
    const found = this.#solve(pace);
    const better = known?.is !== "timetable" || (found.is === "timetable" && found.span <= known.span);
    this.#known.set(key, better ? found : known);
    return better ? found : known;
  }

  /** The same process and pace with something otherwise; null: it cannot be, or was not found. */
  spanIf(
    pace: Pace,
    change: (problem: Problem) => Problem,
    bend: (circle: Circle) => Circle,
  ): Minutes | null {
    this.#left = Number.POSITIVE_INFINITY;
    const { problem } = this.problem(1);
    const { circle } = circleOfProblem(change(problem), pace.days * DAY, this.#sessions(pace));
    return solveCircle(bend(circle), { stop: this.#isOver }).span;
  }

  problem(pieces: number): ShopProblem {
    return rotationProblem(this.#facts, this.#definition, pieces);
  }

  /** Without preparation where that can be; else with as few steps prepared each time as there must be. */
  #solve(pace: Pace): Timetable | Impossible {
    let found = this.#solveWith(pace, []);
    const choices = preparedTasks(this.problem(1).problem);
    for (let count = 1; found.is === "impossible" && count <= choices.length; count++) {
      if (found.why.because !== "together") return found;
      for (const prepared of subsets(choices, count)) {
        const other = this.#solveWith(pace, prepared);
        if (other.is === "impossible") continue;
        if (found.is !== "timetable" || (other.is === "timetable" && other.span < found.span)) found = other;
      }
    }
    return found;
  }

  #solveWith(pace: Pace, prepared: readonly number[]): Timetable | Impossible {
    const { pieces } = pace;
    const ofOne = this.problem(1).problem.tasks.length;
    const circleOf = (count: number): ProblemCircle => {
      const all = Array.from({ length: count }, (_, piece) => prepared.map((task) => task + piece * ofOne));
      const { problem } = this.problem(count);
      return circleOfProblem(problem, pace.days * DAY, this.#sessions(pace), new Set(all.flat()));
    };
    const answer = solvePieces({ circleOf, pieces, isOver: this.#isOver });
    if (answer.starts !== null) {
      const solved = { made: this.problem(pieces), built: circleOf(pieces), answer, starts: answer.starts };
      return makeTimetable(solved, this.round, pace);
    }
    if (answer.status === "infeasible") return { is: "impossible", why: this.#whyNot(pace) };
    return { is: "not found", why: { because: "time was over" } };
  }

  #sessions({ days }: Pace): Circle["sessions"] {
    return repeatRound(this.round, (days * DAY) / this.round.minutes);
  }

  /** The plainest reason why a pace is impossible: not enough bench time, too few hooks, else all together. */
  #whyNot({ pieces, days }: Pace): Impossible["why"] {
    const { problem } = this.problem(1);
    const needed = leastWork(problem, pieces);
    const open = (openMinutes(this.round) * days * DAY) / this.round.minutes;
    if (needed > open * problem.hands) return { because: "hands", needed, open };
    const held = problem.places.map(() => 0);
    for (const { hook } of problem.tasks) {
      if (hook?.stays === true && typeof hook.until === "number")
        held[hook.place] = at(held, hook.place) + hook.until;
    }
    const full = problem.places.findIndex(
      ({ hooks }, place) => at(held, place) * pieces > hooks * days * DAY,
    );
    if (full >= 0)
      return {
        because: "hooks",
        place: at(problem.places, full).name,
        hooks: at(problem.places, full).hooks,
      };
    return { because: "together" };
  }
}

/**
 * Bench time that so many pieces take at least: hands-on, looks, and for each station with set-ups one of each and one
 * putting away, for they may be shared.
 */
function leastWork({ tasks, setUps }: Problem, pieces: number): Minutes {
  const used = setUps.filter((_, number) => tasks.some(({ setUp }) => setUp === number));
  const shared = used.filter(({ station, putAway }) => {
    return putAway > 0 || used.filter((other) => other.station === station).length > 1;
  });
  const made = shared.reduce((sum, { minutes }) => sum + minutes, 0);
  const stations = new Map<number, Minutes>();
  for (const { station, putAway } of used) {
    stations.set(station, Math.min(stations.get(station) ?? putAway, putAway));
  }
  const away = [...stations.values()].reduce((sum, minutes) => sum + minutes, 0);
  return made + away + pieces * tasks.reduce((sum, { minutes, looks }) => sum + minutes + looks.length, 0);
}

/** All ways to take so many things of a list. */
function subsets(list: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return list.flatMap((first, index) =>
    subsets(list.slice(index + 1), count - 1).map((others) => [first, ...others]),
  );
}

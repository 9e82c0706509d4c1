import { WHY } from "./bounds.ts";
import { type Choice, chooseEarliest, chooseLiveliest } from "./choose.ts";
import { Engine } from "./engine.ts";
import { luby } from "./luby.ts";
import type { Model } from "./model.ts";

/**
 * How a run of the search ended: with a better schedule, with the proof that none is as good as was asked, with the
 * proof that none is better than the best, with its patience at an end, or by a stop from outside.
 */
type RunEnd = "found" | "refuted" | "exhausted" | "tired" | "stopped";

/** Clashes before the first restart. */
const RESTART = 64;

/** Learned clauses kept at first. */
const MOST_CLAUSES = 2000;

/**
 * Search by conflict: decide, draw conclusions, and learn from each clash a clause that leads straight back to its
 * cause. What is learned holds for good, so that one search may be asked again and again.
 */
export class SearchByConflict {
  readonly #model: Model;
  readonly #engine: Engine;
  readonly #choice: Choice;
  #restarts = 0;
  #untilRestart = RESTART;
  #mostClauses = MOST_CLAUSES;
  /** Values of all variables in the best schedule so far. */
  best: Int32Array | null = null;
  /** Decisions taken. */
  nodes = 0;

  constructor(model: Model) {
    this.#model = model;
    this.#engine = new Engine(model);
    const isWay = new Uint8Array(model.first.length / 2);
    for (const { variable } of model.ways) isWay[variable] = 1;
    this.#choice = {
      bounds: this.#engine.bounds,
      times: model.times,
      ways: model.ways,
      isWay,
      activity: this.#engine.learner.activity,
    };
  }

  /**
   * Draws the first conclusions.
   *
   * @param bound the goal is no less, as is known from elsewhere
   * @returns false when there is no schedule
   */
  begin(bound: number): boolean {
    return this.#engine.bounds.raise(2 * this.#model.goal, bound, WHY.GIVEN, 0) && this.#engine.propagate();
  }

  /**
   * Takes a schedule found elsewhere.
   *
   * @param values of all variables
   * @returns false when there is none better
   */
  offer(values: Int32Array): boolean {
    return (values[this.#model.goal] as number) > this.most || this.#keep(values);
  }

  /** No schedule has a lesser goal. */
  get bound(): number {
    return this.#engine.bounds.firmBound(2 * this.#model.goal);
  }

  /** The greatest goal that is of interest: one less than that of the best schedule. */
  get most(): number {
    return -this.#engine.bounds.firmBound(2 * this.#model.goal + 1);
  }

  /**
   * Looks for a schedule whose goal is at most `most`: an assumption of this run only.
   *
   * @param patience clashes after which to give up
   * @param isOver asked before each decision
   */
  run(most: number, patience: number, isOver: (nodes: number) => boolean): RunEnd {
    const { bounds } = this.#engine;
    const side = 2 * this.#model.goal + 1;
    let left = patience;
    this.#engine.goBack(0);
    for (;;) {
      if (!this.#engine.propagate()) {
        if (!this.#learn()) return "exhausted";
        if (--left <= 0) return "tired";
        this.#restartAtTimes();
      } else if (bounds.isFalse(side, -most)) {
        return "refuted";
      } else if (isOver(this.nodes)) {
        return "stopped";
      } else if (!bounds.isTrue(side, -most)) {
        bounds.decide(side, -most);
      } else if (!this.#decide()) {
        const standing = bounds.now.filter((_, side) => side % 2 === 0);
        return this.#keep(standing) ? "found" : "exhausted";
      }
    }
  }

  /** @returns false when the clash leaves no way out: nothing better exists */
  #learn(): boolean {
    const { bounds, clauses, learner } = this.#engine;
    const lesson = learner.learn();
    if (lesson === null) return false;
    this.#engine.goBack(lesson.level);
    const { sides, values } = lesson;
    const firm = sides.length === 1;
    const clause = firm ? 0 : clauses.add(sides, values);
    return bounds.raise(sides[0] as number, values[0] as number, firm ? WHY.GIVEN : WHY.CLAUSE, clause);
  }

  #restartAtTimes(): void {
    if (--this.#untilRestart > 0) return;
    this.#untilRestart = RESTART * luby(++this.#restarts);
    this.#engine.goBack(0);
    const { clauses } = this.#engine;
    if (clauses.learned < this.#mostClauses) return;
    clauses.forgetHalf();
    this.#mostClauses += MOST_CLAUSES / 20;
  }

  /** After every fourth restart in order of time, else what clashed most. @returns false when all is decided */
  #decide(): boolean {
    const inTime = this.#restarts % 4 === 0;
    const literal =
      (inTime ? chooseEarliest(this.#choice) : null) ?? chooseLiveliest(this.#choice, this.best);
    if (literal === null) return false;
    this.nodes++;
    this.#engine.bounds.decide(literal.side, literal.value);
    return true;
  }

  /** Asks only for goals of at most so much from now on. @returns false when there are none */
  demand(most: number): boolean {
    this.#engine.goBack(0);
    const side = 2 * this.#model.goal + 1;
    return this.#engine.bounds.raise(side, -most, WHY.GIVEN, 0) && this.#engine.propagate();
  }

  /** Keeps a schedule, and asks for better ones only. @returns false when there can be none */
  #keep(values: Int32Array): boolean {
    this.best = values;
    return this.demand((values[this.#model.goal] as number) - 1);
  }
}

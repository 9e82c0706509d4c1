import { chanceFrom } from "../../chance.ts";
import type { Project } from "../project.ts";
import { generateSchedule } from "./generate-schedule.ts";
import { justify } from "./justify.ts";
import { NO_PATH } from "./longest-paths.ts";
import type { ProjectModel } from "./project-model.ts";

/** Tries from latest starts; after them the best schedule so far is what is blurred. */
const FROM_LATEST = 12;

/**
 * Good schedules without a proof: generated from a rank, by either scheme in turn, and justified. The rank is first
 * that of latest starts, then blurred by more and more, then the best schedule's order blurred.
 */
export class Sampler {
  readonly #project: Project;
  readonly #latest: readonly number[];
  readonly #chance = chanceFrom(1);
  readonly #span: number;
  #tries = 0;
  #best: readonly number[] = [];
  #shortest = Number.POSITIVE_INFINITY;

  private constructor(project: Project, latest: readonly number[]) {
    this.#project = project;
    this.#latest = latest;
    const durations = project.activities.map(({ duration }) => duration);
    this.#span = (3 * durations.reduce((sum, duration) => sum + duration, 0)) / Math.max(1, durations.length);
  }

  /** @returns null where maximal lags may leave a generated schedule in a corner */
  static of(project: Project, model: ProjectModel): Sampler | null {
    return isAcyclic(project, model) ? new Sampler(project, latestStarts(project, model)) : null;
  }

  /**
   * Tries again, some times over.
   *
   * @param bound no schedule ends earlier: when one that ends then is known, no other is looked for
   * @returns starts by activity of a schedule shorter than all before; null: no luck
   */
  improve(tries: number, bound: number): readonly number[] | null {
    const before = this.#best;
    for (let left = tries; left > 0 && this.#shortest > bound; left--) this.#try();
    return this.#best === before ? null : this.#best;
  }

  #try(): void {
    const project = this.#project;
    const scheme = this.#tries % 2 === 0 ? "serial" : "parallel";
    const starts = justify(project, generateSchedule(project, this.#rank(), scheme));
    this.#tries++;
    const end = Math.max(0, ...project.activities.map(({ duration }, at) => (starts[at] ?? 0) + duration));
    // As good is good enough to go on from.
    if (end <= this.#shortest && (end < this.#shortest || this.#tries > FROM_LATEST)) this.#best = starts;
    this.#shortest = Math.min(this.#shortest, end);
  }

  #rank(): number[] {
    const blur = this.#tries / FROM_LATEST;
    return blur < 1
      ? this.#latest.map((late) => late * (1 - blur * this.#chance()))
      : this.#best.map((start) => start + this.#span * this.#chance());
  }
}

/** Whether no activity waits, by however many others, for itself. */
function isAcyclic({ lags }: Project, { bodies, paths }: ProjectModel): boolean {
  return lags.every(({ from, to }) => {
    const back = (bodies.body[to] as number) * paths.size + (bodies.body[from] as number);
    return paths.length[back] === NO_PATH;
  });
}

/** Seen from an end that all can meet: how late each may start by the lags alone. */
function latestStarts(
  { activities }: Project,
  { bodies, paths, goal, endOffset, first }: ProjectModel,
): number[] {
  const latestEnd = endOffset - (first[2 * goal + 1] as number);
  return activities.map((_, activity) => {
    const body = bodies.body[activity] as number;
    const path = paths.length[body * paths.size + goal] as number;
    const offset = bodies.offset[activity] as number;
    return path === NO_PATH ? latestEnd : latestEnd - endOffset - path + offset;
  });
}

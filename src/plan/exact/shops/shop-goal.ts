import type { Minutes } from "../../../time/instant.ts";
import type { Problem } from "../../problem.ts";
import type { ModelDraft } from "../conflict/model-draft.ts";
import { Sum, type Term } from "../conflict/sum.ts";
import type { TaskTimes } from "./shop-tasks.ts";

/** What a plan costs, as a variable to be least. */
export interface Goal {
  readonly variable: number;
  readonly rule: Sum;
  /** By piece: the variable of its finish. */
  readonly finishes: ReadonlyMap<number, number>;
  /** A plan that leaves a piece unfinished costs at least this: what counts is then the horizon. */
  readonly unfinished: number;
}

/**
 * Adds the score of plan/score.ts: lateness, flow and setting up; nothing is mended or prepared here.
 *
 * @param most only plans that cost at most this are of interest
 */
export function addGoal(
  draft: ModelDraft,
  problem: Problem,
  tasks: readonly TaskTimes[],
  most: number,
): Goal {
  const { pieces, prices, horizon, setUps } = problem;
  const variable = draft.add(0, most);
  const finishes = new Map<number, number>();
  const terms: Term[] = [];
  let base = 0;
  let released = 0;
  let least = 0;
  let more = Number.POSITIVE_INFINITY;
  for (const [index, { release, due, weight, cure }] of pieces.entries()) {
    const own = tasks.filter(({ about }) => about.piece === index);
    const costAt = (finish: Minutes) =>
      prices.flow * Math.max(0, finish - release) +
      (due === null ? 0 : prices.late * weight * Math.max(0, finish - due));
    if (own.length === 0) {
      base += costAt(horizon);
      continue;
    }
    const earliest = Math.max(
      release,
      ...own.map(({ start, about }) => draft.least(start) + about.minutes + cure),
    );
    least += costAt(earliest);
    more = Math.min(more, costAt(horizon) - costAt(earliest));
    const finish = draft.add(earliest, horizon + cure);
    for (const { start, about } of own) draft.keep(start, finish, about.minutes + cure);
    finishes.set(index, finish);
    released += prices.flow * release;
    terms.push({ variable: finish, times: prices.flow });
    if (due === null) continue;
    const late = draft.add(0, Math.max(0, horizon + cure - due));
    draft.keep(finish, late, -due);
    terms.push({ variable: late, times: prices.late * weight });
  }
  for (const { made, about } of tasks) {
    const minutes = setUps[about.setUp ?? -1]?.minutes ?? 0;
    if (made !== null && !about.running) terms.push({ variable: made, times: prices.setUp * minutes });
  }
  const rule = new Sum(
    variable,
    base - released,
    terms.filter(({ times }) => times > 0),
  );
  return { variable, rule, finishes, unfinished: base + least + more };
}

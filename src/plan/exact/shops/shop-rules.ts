import type { Problem } from "../../problem.ts";
import { Machine } from "../conflict/machine.ts";
import type { Rule } from "../conflict/model.ts";
import type { ModelDraft } from "../conflict/model-draft.ts";
import { Profile } from "../conflict/profile.ts";
import { lookBackward, lookForward, type ResourceActivity } from "../conflict/resource.ts";
import type { LongestPaths } from "../projects/longest-paths.ts";
import { type Outing, OutRule } from "./out-rule.ts";
import { SetUpRule } from "./set-up-rule.ts";
import type { Before } from "./shop-orders.ts";
import type { TaskTimes } from "./shop-tasks.ts";

/** One pair of hands: the orders say all, edge-finding says it sooner. */
export function handsRules(tasks: readonly TaskTimes[]): Rule[] {
  // Set-ups are not part of the work here: whether they are made is open.
  const running = tasks.filter(({ about }) => about.running);
  // Two in hand at once are a fact, which no rule may call impossible; the orders have all others after them.
  const users = (running.length > 1 ? tasks.filter(({ about }) => !about.running) : tasks).map(
    ({ start, about }) => ({ body: start, offset: 0, duration: about.minutes, demand: 1 }),
  );
  return [new Machine(lookForward(users, 1)), new Machine(lookBackward(users, 1))];
}

/** What stands at each station. */
export function setUpRules(
  { stations, setUps }: Problem,
  tasks: readonly TaskTimes[],
  before: Before,
): Rule[] {
  const keeps = new Map(setUps.map((setUp, number) => [number, setUp.keeps]));
  return stations.flatMap(({ standing }, station) => {
    const places: number[] = [];
    const users = tasks.flatMap(({ about, start, made }, place) => {
      if (about.station !== station || about.setUp === null || made === null) return [];
      places.push(place);
      return [{ setUp: about.setUp, start, duration: about.minutes, made }];
    });
    if (users.length === 0) return [];
    // How long what stands now is good for is left to the checker: it may spare a set-up here, never ask for one.
    const stands = standing === null || standing === "any" ? standing : standing.setUp;
    return [new SetUpRule(users, keeps, stands, (a, b) => before(places[a] as number, places[b] as number))];
  });
}

/** Hooks that stay taken for a time that is known. */
export function hookRules({ places }: Problem, tasks: readonly TaskTimes[]): Rule[] {
  return places.flatMap(({ hooks }, place) => {
    const users = tasks.flatMap(({ about, start }): ResourceActivity[] => {
      const { hook, minutes } = about;
      if (hook?.place !== place || hook.stays !== true || typeof hook.until !== "number") return [];
      return [{ body: start, offset: minutes, duration: hook.until, demand: 1 }];
    });
    // Enough for all at once.
    if (users.length <= hooks) return [];
    return [new Profile(lookForward(users, hooks)), new Profile(lookBackward(users, hooks))];
  });
}

/**
 * The limit on how many pieces are out; a piece of which any of several tasks may be first counts for nothing. Where
 * more are out already, or some may be begun whatever the limit, the limit is left to the checker.
 */
export function outRules(
  draft: ModelDraft,
  { mostOut, pieces }: Problem,
  tasks: readonly TaskTimes[],
  { length, size }: LongestPaths,
  finishes: ReadonlyMap<number, number>,
): Rule[] {
  const begun = pieces.filter((piece) => piece.begun).length;
  const isPlain = pieces.every((piece) => piece.begun || piece.underLimit);
  if (mostOut === null || begun > mostOut || !isPlain) return [];
  const outings = [...finishes].flatMap(([piece, until]): Outing[] => {
    if (pieces[piece]?.begun === true) return [{ from: draft.add(0, 0), until }];
    const own = [...tasks.keys()].filter((place) => tasks[place]?.about.piece === piece);
    const first = own.find((place) => own.every((other) => (length[place * size + other] as number) >= 0));
    return first === undefined ? [] : [{ from: (tasks[first] as TaskTimes).begin, until }];
  });
  return outings.length <= mostOut ? [] : [new OutRule(outings, mostOut)];
}

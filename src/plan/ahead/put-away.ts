import type { Instant, Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { Visit } from "../plan.ts";
import type { PutAway } from "../plan-answer.ts";
import type { PlanSession, Problem } from "../problem.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";

/** A set-up that stood at a station, and until when it was used. */
interface Stood {
  readonly setUp: number;
  readonly until: Minutes;
}

/**
 * What is to be put away in a session, and by when. At each station that is the set-up whose putting away takes longest,
 * since that is the time the problem keeps; of several as long, the last. It is put away before the first later work that
 * must keep apart from what it gives off, else as the bench shuts.
 *
 * @param ends the moment the session closes
 * @returns one for each station that has something to put away, the soonest first
 */
export function putAwayAfter(
  shop: PlannedShop,
  { opens, closes }: PlanSession,
  visits: readonly Visit[],
  ends: Instant,
): readonly PutAway[] {
  const { problem } = shop.made;
  const words = setUpWords(shop);
  const all = problem.stations.flatMap(({ name, standing }, station) => {
    const stands = opens <= 0 && closes > 0 && standing !== null && standing !== "any";
    const stood: Stood[] = stands ? [{ setUp: standing.setUp, until: 0 }] : [];
    const longest = [...stood, ...usesAt(problem, station, visits)].reduce<Stood | null>(
      (most, one) => (most === null || putAwayOf(problem, one) >= putAwayOf(problem, most) ? one : most),
      null,
    );
    const minutes = longest === null ? 0 : putAwayOf(problem, longest);
    if (longest === null || minutes === 0) return [];
    const apart = firstApart(problem, longest, visits);
    const by = apart < closes ? momentOf(shop, apart) : ends;
    return [{ station: name, what: words.get(longest.setUp) ?? name, minutes, by }];
  });
  return all.toSorted((one, other) => one.by - other.by);
}

const putAwayOf = ({ setUps }: Problem, { setUp }: Stood): Minutes => at(setUps, setUp).putAway;

/** By number, what each set-up is called. */
function setUpWords({ facts, made, tasks }: PlannedShop): ReadonlyMap<number, string> {
  const { problem } = made;
  const words = new Map(tasks.map((one) => [at(problem.tasks, one.task).setUp ?? -1, one.setUp ?? ""]));
  for (const { station, setUp } of facts.standing) {
    const { standing } = problem.stations.find(({ name }) => name === station) ?? { standing: null };
    if (standing !== null && standing !== "any") words.set(standing.setUp, setUp.what);
  }
  return words;
}

function usesAt({ tasks }: Problem, where: number, visits: readonly Visit[]): Stood[] {
  return visits.flatMap(({ task, part, end }) => {
    const { setUp, station } = at(tasks, task);
    return part === "preparation" || station !== where || setUp === null ? [] : [{ setUp, until: end }];
  });
}

/** When the first work after the last use of a set-up begins that must keep apart from what it gives off; Infinity: none. */
function firstApart(problem: Problem, { setUp, until }: Stood, visits: readonly Visit[]): Minutes {
  const { gives } = at(problem.setUps, setUp);
  const isApart = (what: number) =>
    problem.apart.some(([one, other]) => gives.includes(one === what ? other : other === what ? one : -1));
  const begins = visits
    .filter(({ start }) => start >= until)
    .flatMap((visit) =>
      givenBy(problem, visit).map(({ what, fromSetUp }) =>
        isApart(what) ? visit.start - (fromSetUp ? visit.setUp : 0) : Number.POSITIVE_INFINITY,
      ),
    );
  return Math.min(Number.POSITIVE_INFINITY, ...begins);
}

function givenBy({ tasks }: Problem, { task, part }: Visit) {
  const { gives, waits } = at(tasks, task);
  if (part !== "preparation") return gives;
  return waits.flatMap(({ windows }) => windows.flatMap(({ preparation }) => preparation?.gives ?? []));
}

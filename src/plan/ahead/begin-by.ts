import { MINUTE, type Minutes } from "../../time/instant.ts";
import { lastBefore } from "../air-lags.ts";
import { at } from "../at.ts";
import { completions } from "../completions.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Visit } from "../plan.ts";
import type { PlannedShop } from "./planned-shop.ts";

/**
 * By when the hands must turn to a row of visits, so that each visit still begins in the window that the plan has it in:
 * the first shut, less the set-up and the visits of the row that come before.
 *
 * @returns null: no window shuts before the bench opens again, so the row may as well be left; `by: null`: none shuts in
 *   this bench session, so any minute of it will do
 */
export function beginBy(shop: PlannedShop, visits: readonly Visit[]): { readonly by: Minutes | null } | null {
  const [first] = visits;
  if (first === undefined) return null;
  const from = first.start - first.setUp;
  const shuts = Math.min(...visits.map((visit) => shutOf(shop, visit) - (visit.start - from)));
  const latest = withSetUp(shop, first, shuts);
  const { sessions } = shop.made.problem;
  const opens = sessions.find((session) => session.opens > from)?.opens ?? Infinity;
  if (latest > opens) return null;
  const closes = sessions.find((session) => session.closes > from)?.closes ?? Infinity;
  return { by: latest <= closes ? latest : null };
}

/** The same where what stands for the first visit keeps no longer than until then: it is made anew before it. */
function withSetUp({ made: { problem }, plan }: PlannedShop, first: Visit, shuts: Minutes): Minutes {
  const { setUp: number } = at(problem.tasks, first.task);
  if (number === null || first.part === "preparation" || first.setUp > 0) return shuts;
  const setUp = at(problem.setUps, number);
  if (setUp.keeps.way === "load") return shuts;
  const uses = plan.visits.filter(
    ({ task, part, start }) =>
      part !== "preparation" && start < first.start && at(problem.tasks, task).setUp === number,
  );
  const { standing } = at(problem.stations, setUp.station);
  const stood = standing === null || standing === "any" ? null : standing;
  const since =
    setUp.keeps.way === "heat"
      ? Math.max(stood?.ready ?? 0, stood?.lastUsed ?? 0, ...uses.map(({ end }) => end))
      : (uses.findLast((use) => use.setUp > 0)?.start ?? stood?.ready ?? 0);
  const kept = since + setUp.keeps.minutes;
  return kept >= shuts ? shuts : Math.max(kept, shuts - setUp.minutes);
}

/** When the window shuts that a visit begins in; Infinity: never. */
function shutOf(shop: PlannedShop, visit: Visit): Minutes {
  const { problem } = shop.made;
  const { plan } = shop;
  const task = at(problem.tasks, visit.task);
  if (visit.part !== "step" || task.running) return Infinity;
  // A part that goes on with what was begun waits for nothing any more.
  if (
    plan.visits.some(
      (other) => other.task === visit.task && other.part === "step" && other.start < visit.start,
    )
  )
    return Infinity;
  const shuts = task.waits.map(({ on, windows }) => {
    const { ended } = at(problem.tasks, on);
    const ends = [...completions(problem, plan.visits, on), ...(ended === null ? [] : [ended])];
    const end = Math.max(...ends.filter((moment) => moment <= visit.start));
    const window = windows.find(
      ({ opens, shuts: lag }) =>
        openingAfter(opens, end) <= visit.start && shutAfter(lag, end) >= visit.start,
    );
    if (window === undefined) return Infinity;
    const last = shutAfter(window.shuts, end);
    return ended === null ? last + 1 : shutOfLaid(shop, visit.task, last);
  });
  return Math.min(Infinity, ...shuts);
}

/** The very moment, in minutes, of a shut upon a coat that hangs: of a window whose last whole minute is `last`. */
function shutOfLaid({ facts, tasks }: PlannedShop, task: number, last: Minutes): Minutes {
  const shuts = (at(tasks, task).facts?.wait?.windows ?? []).flatMap(({ shuts }) =>
    shuts === null ? [] : [(shuts - facts.context.now) / MINUTE],
  );
  return shuts.find((shut) => lastBefore(shut) === last) ?? last + 1;
}

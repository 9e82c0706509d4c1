import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { completions } from "../completions.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { Visit } from "../plan.ts";
import type { PlannedShop } from "./planned-shop.ts";

/**
 * The last minute at which the hands may turn to a row of visits so that no window shuts that the plan keeps (null: any
 * of this bench session). Null: none shuts before the bench opens again, so the row may as well be left.
 */
export function beginBy(shop: PlannedShop, visits: readonly Visit[]): { readonly by: Minutes | null } | null {
  const [first] = visits;
  if (first === undefined) return null;
  const from = first.start - first.setUp;
  const latest = Math.min(...visits.map((visit) => shutOf(shop, visit) - (visit.start - from)));
  const { sessions } = shop.made.problem;
  const opens = sessions.find((session) => session.opens > from)?.opens ?? Infinity;
  if (latest >= opens) return null;
  const closes = sessions.find((session) => session.closes > from)?.closes ?? Infinity;
  return { by: latest < closes ? latest : null };
}

/** The last start of the window that a visit begins in; Infinity: it never shuts. */
function shutOf({ made: { problem }, plan }: PlannedShop, visit: Visit): Minutes {
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
    return window === undefined ? Infinity : shutAfter(window.shuts, end);
  });
  return Math.min(Infinity, ...shuts);
}

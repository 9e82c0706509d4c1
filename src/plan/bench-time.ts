import type { Session } from "../time/bench-hours.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { type Candidate, setUpFor } from "./candidates.ts";
import type { ShopFacts } from "./plan-shop.ts";
import { LOOK, SHORTEST_PART } from "./problem.ts";

/** The bench session running now; null: the bench is shut. */
export function sessionNow({ sessions, context }: ShopFacts): Session | null {
  const [first] = sessions;
  return first !== undefined && first.opens <= context.now ? first : null;
}

/** How many of the group, from the first on, can be worked one after the other before the session closes. */
export function howManyFit(
  group: readonly Candidate[],
  from: Instant,
  session: Session,
  facts: ShopFacts,
): number {
  for (let count = group.length; count > 0; count--) {
    if (after(from, benchMinutes(group.slice(0, count), facts)) <= session.closes) return count;
  }
  return 0;
}

/** The first moment from one on at which the bench is open long enough; null: no session in the horizon is. */
export function firstFit(group: readonly Candidate[], from: Instant, facts: ShopFacts): Instant | null {
  for (const session of facts.sessions) {
    const start = fitFrom(group, Math.max(from, session.opens), facts);
    if (start !== null && after(start, benchMinutes(group, facts)) <= session.closes) return start;
  }
  return null;
}

/** The first moment from one on at which the air is fit for the coat they lay; null: not as far as is planned. */
function fitFrom([first]: readonly Candidate[], moment: Instant, facts: ShopFacts): Instant | null {
  if (first === undefined || first.coat === null || first.part === "preparation") return moment;
  const { now } = facts.context;
  let from = moment;
  for (const [begins, ends] of facts.unfitFor(first.coat, first.step.place)) {
    if (after(from, first.minutes) > after(now, begins) && from < after(now, ends)) from = after(now, ends);
  }
  return from < after(now, facts.horizon) ? from : null;
}

/** Bench time it takes: set-up, hands-on, looks, and putting away all that then stands. */
function benchMinutes(group: readonly Candidate[], facts: ShopFacts): Minutes {
  const [first] = group;
  if (first === undefined) return 0;
  const { step, part } = first;
  const setUp =
    part === "preparation" ? (step.setUp?.takes ?? 0) : (setUpFor(first, group.length, facts)?.minutes ?? 0);
  const hands = group.reduce((sum, { minutes, thenMinutes }) => sum + minutes + thenMinutes, 0);
  const least = step.mayStop && part === "step" ? Math.min(hands, SHORTEST_PART) : hands;
  const look = step.look.reduce((last, minute) => Math.max(last, minute + LOOK), 0);
  const here = facts.standing.find(({ station }) => station === step.station)?.setUp.putAwayMinutes ?? 0;
  const all = facts.standing.reduce((sum, one) => sum + one.setUp.putAwayMinutes, 0);
  const stands = all - here + Math.max(here, step.setUp?.putAway ?? 0);
  return setUp + least + Math.max(look, stands);
}

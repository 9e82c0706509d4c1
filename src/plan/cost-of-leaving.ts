import { after, type Instant } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import type { IfLeft } from "./now-answer.ts";
import type { ShopFacts } from "./plan-shop.ts";

/** What planning without a row of work finds; the windows it will have missed are known without. */
export type WithoutIt = Pick<IfLeft, "finishNow" | "finishLeft" | "others">;

/** Nothing is known yet of a plan without it. */
export const notFoundYet: WithoutIt = { finishNow: null, finishLeft: null, others: null };

/**
 * What it brings to leave a row for the rest of this bench session: the windows that shut before the bench can use
 * them, and what a plan without it brings.
 */
export function costOfLeaving(
  row: readonly Candidate[],
  setUpMinutes: number,
  facts: ShopFacts,
  withoutIt: WithoutIt,
): IfLeft {
  const session = sessionNow(facts);
  const next = facts.sessions[session === null ? 0 : 1]?.opens ?? null;
  const lost = row
    .flatMap(({ tag, state }) => (tag !== null && state.is === "open" ? [{ tag, state }] : []))
    .filter(({ state }) => isLost(state.shuts, next === null ? null : after(next, setUpMinutes)))
    .sort((a, b) => (a.state.shuts ?? 0) - (b.state.shuts ?? 0));
  const first = lost[0]?.state ?? null;
  return {
    preparation: first?.preparationAfter ?? null,
    preparationFrom: first?.preparationAfter ? (first.nextOpens ?? first.shuts) : null,
    mend: first !== null && !first.opensAgain,
    shut: lost.map(({ tag, state }) => ({ tag, at: state.shuts ?? 0 })),
    ...withoutIt,
  };
}

function isLost(shuts: Instant | null, next: Instant | null): boolean {
  return shuts !== null && (next === null || shuts <= next);
}

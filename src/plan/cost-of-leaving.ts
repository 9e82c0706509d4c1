import { after, type Instant, MINUTE } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import { firstFinish } from "./dispatch.ts";
import type { IfLeft } from "./now-answer.ts";
import type { Plan } from "./plan.ts";
import type { ShopFacts } from "./plan-shop.ts";
import type { Prepared } from "./prepare-dispatch.ts";

/**
 * What it brings to leave a row for the rest of this bench session: the windows that shut before the bench can use
 * them, and when the first of its pieces is finished, found by dispatching again without it.
 *
 * Leaving may finish a piece sooner: a priority rule is no search, and more freedom can make its answer worse
 * (R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17, 1969). Then that is what is told.
 */
export function costOfLeaving(
  row: readonly Candidate[],
  setUpMinutes: number,
  facts: ShopFacts,
  prepared: Prepared,
  plan: Plan,
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
    ...finishes(row, facts, prepared, plan, session?.closes ?? facts.context.now),
  };
}

function isLost(shuts: Instant | null, next: Instant | null): boolean {
  return shuts !== null && (next === null || shuts <= next);
}

function finishes(
  row: readonly Candidate[],
  { context, horizon }: ShopFacts,
  prepared: Prepared,
  plan: Plan,
  closes: Instant,
): Pick<IfLeft, "finishNow" | "finishLeft"> {
  const tasks = row.flatMap(({ task }) => (task === null ? [] : [task]));
  const pieces = row.flatMap(({ piece }) => (piece === null ? [] : [piece]));
  const now = Math.min(...pieces.map((piece) => plan.finish[piece] ?? horizon));
  if (pieces.length === 0 || now >= horizon) return { finishNow: null, finishLeft: null };
  const until = Math.floor((closes - context.now) / MINUTE);
  const left = firstFinish(prepared, { tasks, until }, pieces);
  return {
    finishNow: after(context.now, now),
    finishLeft: left === null ? null : after(context.now, left),
  };
}

import type { Tag } from "../journal/event.ts";
import type { Leaving } from "../journal/journal.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import type { WithoutIt } from "./cost-of-leaving.ts";
import { isLeftAnyway, keyOfRow, leftWork } from "./left-work.ts";
import { tagsOf } from "./plan-row.ts";
import type { ShopFacts } from "./plan-shop.ts";
import type { Found } from "./work-rows.ts";

/** Until when work is left that is left now: the end of this bench session; 0: the bench is shut. */
export function leavingUntil(facts: ShopFacts): Instant {
  return sessionNow(facts)?.closes ?? 0;
}

/**
 * What leaving a row does to the plan, by what was found and kept with it: the plan as it is played on now, against
 * the plan without the row.
 *
 * @returns null when nothing was kept of this row for this bench session
 */
export function withoutByRow(
  work: readonly Candidate[],
  { facts, made, plan }: Found,
  leaving: Leaving,
): WithoutIt | null {
  const { problem, pieces } = made;
  const tags = tagsOf(pieces);
  const row = leftWork(work, facts, made);
  const planned = (piece: number): Instant | null => {
    const minutes = plan.finish[piece] ?? null;
    return minutes === null ? null : after(problem.origin, minutes);
  };
  const finishNow = soonest(row.pieces.map(planned));
  if (isLeftAnyway(row, plan)) {
    return { finishNow, finishLeft: finishNow, others: { amends: 0, broken: [], delay: 0, later: [] } };
  }
  const key = keyOfRow(work);
  const kept =
    leaving.until === leavingUntil(facts) ? leaving.work.find((one) => one.key === key) : undefined;
  if (kept === undefined) return null;
  const left = new Map(kept.finish);
  const leftAt = (piece: number): Instant | null => left.get(tags[piece] ?? 0) ?? null;
  const broken: Tag[] = [];
  const later: { tag: Tag; minutes: Minutes }[] = [];
  let delay = 0;
  // Not within the days planned: at their end, the least it can be.
  const end = after(problem.origin, problem.horizon);
  for (const [piece, { tag }] of pieces.entries()) {
    const [before, then] = [planned(piece), leftAt(piece)];
    if (tag === null || before === null) continue;
    const due = problem.pieces[piece]?.due ?? null;
    const dueAt = due === null ? null : after(problem.origin, due);
    // A weight stands for "due now" and is no promise.
    if (
      dueAt !== null &&
      dueAt > problem.origin &&
      before <= dueAt &&
      (then ?? Number.POSITIVE_INFINITY) > dueAt
    )
      broken.push(tag);
    if (row.pieces.includes(piece)) continue;
    const minutes = Math.round(((then ?? end) - before) / MINUTE);
    delay += minutes;
    if (minutes > 0) later.push({ tag, minutes });
  }
  later.sort((a, b) => b.minutes - a.minutes || a.tag - b.tag);
  const finishLeft = soonest(row.pieces.map(leftAt));
  return {
    finishNow,
    finishLeft: isSameMinute(finishNow, finishLeft) ? finishNow : finishLeft,
    others: { amends: kept.amends, broken, delay, later },
  };
}

function soonest(moments: readonly (Instant | null)[]): Instant | null {
  const first = Math.min(...moments.map((moment) => moment ?? Number.POSITIVE_INFINITY));
  return first === Number.POSITIVE_INFINITY ? null : first;
}

/** A plan kept was found some seconds off the minutes of the present one. */
function isSameMinute(one: Instant | null, other: Instant | null): boolean {
  return one !== null && other !== null && Math.abs(one - other) < MINUTE;
}

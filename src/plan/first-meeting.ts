import type { Minutes } from "../time/instant.ts";
import { firstFit } from "./fit-minutes.ts";
import type { PlanSession, UnfitSpan } from "./problem.ts";

/**
 * Work looking for bench time: `lead` minutes directly before its start, `need` from its start on, in one session, the first
 * `hands` of them in none of the stretches that are unfit for it.
 */
export interface Seeking {
  readonly lead: Minutes;
  readonly need: Minutes;
  readonly hands: Minutes;
  readonly unfit: readonly UnfitSpan[];
}

/**
 * The first minute from `opens` to `shuts` (both count) at which the work may start with the bench open.
 *
 * @returns Infinity when the window shuts before the bench is open long enough
 * @example firstMeeting([{ opens: 0, closes: 180 }], 100, 300, { lead: 0, need: 60, hands: 60, unfit: [] }) // → 100
 */
export function firstMeeting(
  sessions: readonly PlanSession[],
  opens: Minutes,
  shuts: Minutes,
  { lead, need, hands, unfit }: Seeking,
): Minutes {
  for (const session of sessions) {
    if (session.opens + lead > shuts) break;
    const start = firstFit(unfit, hands, Math.max(opens, session.opens + lead));
    if (start <= shuts && start + need <= session.closes) return start;
  }
  return Number.POSITIVE_INFINITY;
}

/** By how many minutes a shut comes too early for the next start that will do; Infinity: none follows. */
export function missedBy(sessions: readonly PlanSession[], shuts: Minutes, seeking: Seeking): Minutes {
  return firstMeeting(sessions, shuts, Number.POSITIVE_INFINITY, seeking) - shuts;
}

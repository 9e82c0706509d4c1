import type { Minutes } from "../time/instant.ts";
import type { PlanSession } from "./problem.ts";

/** Work looking for bench time: `lead` minutes directly before its start, `need` from its start on, in one session. */
export interface Seeking {
  readonly lead: Minutes;
  readonly need: Minutes;
}

/**
 * The first minute from `opens` to `shuts` (both count) at which the work may start with the bench open.
 *
 * @returns Infinity when the window shuts before the bench is open long enough
 * @example firstMeeting([{ opens: 0, closes: 180 }], 100, 300, { lead: 0, need: 60 }) // → 100
 */
export function firstMeeting(
  sessions: readonly PlanSession[],
  opens: Minutes,
  shuts: Minutes,
  { lead, need }: Seeking,
): Minutes {
  for (const session of sessions) {
    if (session.opens + lead > shuts) break;
    const start = Math.max(opens, session.opens + lead);
    if (start <= shuts && start + need <= session.closes) return start;
  }
  return Number.POSITIVE_INFINITY;
}

/** By how many minutes a shut comes too early for the next session; Infinity: no session follows. */
export function missedBy(sessions: readonly PlanSession[], shuts: Minutes, lead: Minutes): Minutes {
  const next = sessions.find((session) => session.opens + lead > shuts);
  return next === undefined ? Number.POSITIVE_INFINITY : next.opens + lead - shuts;
}

import type { Coat } from "../process/coat.ts";
import type { Session } from "../time/bench-hours.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { at } from "./at.ts";
import { firstMeeting, type Seeking } from "./first-meeting.ts";
import { openingAfter, shutAfter } from "./lag.ts";
import type { WindowAhead } from "./now-answer.ts";
import type { Prepared } from "./prepare-dispatch.ts";
import type { PlanWindow, Problem, Task } from "./problem.ts";
import { seekingOf } from "./windows-ahead.ts";

/**
 * Looks ahead before a coat is laid, while it can still be left: will the next coat find time in a window that asks for
 * no preparation?
 *
 * @param task the coat's number in the problem
 * @param hangs minutes from now until it would hang
 * @param takes minutes from beginning it to hanging it
 * @returns null when it will; else what comes of it and what could be done instead
 */
export function lookAhead(
  { problem, tasks }: Prepared,
  task: number,
  hangs: Minutes,
  takes: Minutes,
  coat: Coat,
): WindowAhead | null {
  for (const next of at(tasks, task).followers) {
    const follower = at(problem.tasks, next);
    const wait = follower.waits.find(({ on }) => on === task);
    if (wait === undefined) continue;
    const free = wait.windows.filter(({ preparation }) => preparation === null);
    if (free.length === 0 || free.some((window) => isMet(problem, window, follower, hangs))) continue;
    const window = at(free, 0);
    return {
      opens: momentOf(problem, openingAfter(window.opens, hangs)),
      // The problem counts the last minute that will do; the window shuts with the next.
      shuts: momentOf(problem, shutAfter(window.shuts, hangs) + 1),
      preparation: coat.windows.find(({ first }) => first !== null)?.first ?? null,
      nextMinutes: follower.minutes,
      hangBy: latestHang(problem, window, follower),
      layFrom: nextChance(problem, free, { laid: at(problem.tasks, task), follower }, takes),
      ...(free.some((one) => isMet(problem, one, { ...follower, unfit: [] }, hangs))
        ? { isAir: true as const }
        : {}),
    };
  }
  return null;
}

/** Null: never, in the air that is expected. */
function momentOf({ origin }: Problem, minute: Minutes): Instant | null {
  return Number.isFinite(minute) ? after(origin, minute) : null;
}

function isMet(problem: Problem, window: PlanWindow, follower: Task, hangs: Minutes): boolean {
  const seeking = seekingOf(problem, window, follower);
  const shuts = shutAfter(window.shuts, hangs);
  return (
    firstMeeting(problem.sessions, openingAfter(window.opens, hangs), shuts, seeking) <
    Number.POSITIVE_INFINITY
  );
}

/** By when it has to hang for the next coat to be done in the session running now. */
function latestHang(problem: Problem, window: PlanWindow, follower: Task): Instant | null {
  const [session] = problem.sessions;
  if (session === undefined || session.opens > 0) return null;
  const seeking: Seeking = seekingOf(problem, window, follower);
  const last = session.closes - seeking.need;
  // A later hang never opens earlier, so the first that will do, counted back, is the latest.
  for (let hang = last; hang >= session.opens; hang--) {
    const opens = openingAfter(window.opens, hang);
    if (opens <= last && firstMeeting([session], opens, last, seeking) <= last)
      return after(problem.origin, hang);
  }
  return null;
}

/** The first later session in which it can hang, early or late, for a window that is met. */
function nextChance(
  problem: Problem,
  free: readonly PlanWindow[],
  { laid, follower }: { readonly laid: Task; readonly follower: Task },
  takes: Minutes,
): Session["opens"] | null {
  const isFit = (hang: Minutes) =>
    (laid.unfit ?? []).every(([from, until]) => hang <= from || hang - laid.minutes >= until);
  for (const session of problem.sessions) {
    if (session.opens <= 0) continue;
    const hangs = [session.opens + takes, session.closes].filter(isFit);
    if (hangs.some((hang) => free.some((window) => isMet(problem, window, follower, hang)))) {
      return after(problem.origin, session.opens);
    }
  }
  return null;
}

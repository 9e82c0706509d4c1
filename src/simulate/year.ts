import { at } from "../plan/at.ts";
import type { Problem, Task } from "../plan/problem.ts";
import { usualPrices } from "../plan/score.ts";
import type { Minutes } from "../time/instant.ts";
import { type Policy, playForward } from "./play-forward.ts";
import { addPiece, beginPlay, type PlayState } from "./play-state.ts";
import type { WorkNoise } from "./work-noise.ts";

/** Days and weeks in minutes. */
const DAY: Minutes = 1440;
const WEEK: Minutes = 7 * DAY;

/** A shop that is never short of work: as one piece is finished, the next may be begun. */
export interface Stream {
  /** The shop, and in it the one piece (its first) that all are like. */
  readonly shop: Problem;
  /** How many are out at most. */
  readonly out: number;
  /** How many more than may be out now a plan looks at. */
  readonly ahead: number;
}

/** What counts: from the end of the warm-up until the end. */
export interface Span {
  readonly from: Minutes;
  readonly until: Minutes;
}

/** What a stretch of work gave. */
export interface Figures {
  readonly finished: number;
  readonly finishedPerWeek: number;
  /** Preparations and mends a finished piece: windows missed. */
  readonly missed: number;
  /** Minutes of them a finished piece. */
  readonly amends: Minutes;
  /** Minutes of setting up a finished piece. */
  readonly setUp: Minutes;
  /** From first hands-on to finish, of those finished. */
  readonly daysOut: number;
  /** Bench minutes that went into work, for each that the bench was open. */
  readonly busy: number;
  /** What a finished piece cost by the plan's score: see `scorePieces`. */
  readonly score: number;
}

/** Plays a stream of pieces under a policy and counts what it gave. */
export function playStream(stream: Stream, policy: Policy, noise: WorkNoise, span: Span): Figures {
  return countFigures(playPieces(stream, policy, noise, span.until), stream, span);
}

/** Plays a stream of pieces; the shop as it is at the end, with all that was done. */
export function playPieces(stream: Stream, policy: Policy, noise: WorkNoise, until: Minutes): PlayState {
  const { shop, out, ahead } = stream;
  const piece = at(shop.pieces, 0);
  const tasks = shop.tasks.filter((task) => task.piece === 0);
  const state = beginPlay({ ...shop, mostOut: out, pieces: [], tasks: [] });
  playForward(state, policy, noise, until, () => {
    while (state.unfinished.length < out + ahead) {
      const number = state.pieces.length;
      addPiece(state, piece, numbered(tasks, number, state.tasks.length));
    }
  });
  return state;
}

function numbered(tasks: readonly Task[], piece: number, first: number): Task[] {
  return tasks.map((task) => ({
    ...task,
    piece,
    waits: task.waits.map((wait) => ({ ...wait, on: wait.on + first })),
  }));
}

function countFigures(state: PlayState, { shop, out }: Stream, { from, until }: Span): Figures {
  const inSpan = (minute: Minutes | null): boolean => minute !== null && minute >= from && minute < until;
  const finished = state.pieces.filter(({ finish }) => inSpan(finish));
  const visits = state.visits.filter(({ end }) => inSpan(end));
  const amending = visits.filter(({ part }) => part !== "step");
  const count = finished.length;
  const minutesOf = (some: typeof visits) => some.reduce((sum, { start, end }) => sum + end - start, 0);
  const setUp = visits.reduce((sum, visit) => sum + visit.setUp, 0);
  const amends = minutesOf(amending);
  return {
    finished: count,
    finishedPerWeek: (count * WEEK) / (until - from),
    missed: amending.filter(({ part }) => part !== "again").length / count,
    amends: amends / count,
    setUp: setUp / count,
    daysOut: finished.reduce((sum, one) => sum + (one.finish ?? 0) - (one.began ?? 0), 0) / count / DAY,
    busy: (minutesOf(visits) + setUp) / openMinutes(shop, { from, until }),
    score: scorePieces({ out, minutes: until - from, count, amends, setUp }),
  };
}

/**
 * What a finished piece cost by the plan's own prices. Its flow counts from the minute it might have been begun, when
 * another was finished: so `out` pieces are waited for at every minute, and what each finished one was waited for is
 * `out * minutes / count`, whatever became of those that were not finished (J. D. C. Little, A proof for the queuing
 * formula L = λW, Operations Research 9, 1961).
 *
 * @example six out for a week, seven finished, nothing amended or set up: 6 x 10080 / 7 = 8640, six days each
 */
function scorePieces(of: {
  out: number;
  minutes: Minutes;
  count: number;
  amends: Minutes;
  setUp: Minutes;
}): number {
  const { flow, amends, setUp } = usualPrices;
  return (flow * of.out * of.minutes + amends * of.amends + setUp * of.setUp) / of.count;
}

/** Minutes of a span in which the bench is open. */
export function openMinutes({ sessions }: Pick<Problem, "sessions">, { from, until }: Span): Minutes {
  return sessions.reduce(
    (sum, { opens, closes }) => sum + Math.max(0, Math.min(closes, until) - Math.max(opens, from)),
    0,
  );
}

import type { Minutes } from "../../time/instant.ts";
import type { Circle, CircleTask } from "./circle.ts";
import type { CircleWork, ProblemCircle } from "./circle-of-problem.ts";
import { leastSpansOf } from "./pattern/least-spans.ts";
import { mod } from "./pattern/mod.ts";
import { routeOf } from "./pattern/route.ts";
import { type CircleAnswer, solveCircle } from "./solve-circle.ts";

/** Nodes given to the exact search of one or two pieces among the others. */
const NODES_A_TRY = 300;
/** Rounds without a better rotation before it stays as it is. */
const PATIENCE = 4;

export interface PiecesAsk {
  /** The rotation of so many pieces. A rotation of fewer is a beginning of it: its tasks come first. */
  readonly circleOf: (pieces: number) => ProblemCircle;
  readonly pieces: number;
  readonly isOver: () => boolean;
}

/**
 * A rotation of several alike pieces a period. One piece is solved exactly. More are put in one by one, each exactly
 * among those before it, and then taken out and put back one and two at a time while that helps (a large neighbourhood
 * search whose every move is exact).
 */
export function solvePieces({ circleOf, pieces, isOver }: PiecesAsk): CircleAnswer {
  let found = solveCircle(circleOf(1).circle, { stop: isOver });
  const bound = pieces === 1 ? found.bound : leastSpansOf(routeOf(circleOf(1).circle), pieces);
  const none = { ...found, starts: null, span: null, bound };
  for (let count = 2; count <= pieces && found.starts !== null; count++) {
    const whole = circleOf(count);
    const known = solveCircle(whole.circle, { stop: (nodes) => nodes > 1 || isOver() });
    if (known.status === "infeasible") return { ...none, status: "infeasible" };
    found = insert(whole, found, count - 1, isOver);
  }
  if (found.starts === null) return { ...none, status: pieces === 1 ? found.status : "unknown" };
  return pieces === 1 ? found : improve(circleOf(pieces), found, { pieces, bound, isOver });
}

/** How firmly the work of the other pieces stays: each task at its minute, or only in its session and order there. */
type Hold = "minutes" | "order";

/** Puts one piece more in, if need be together with one of the others taken out again. */
function insert(
  whole: ProblemCircle,
  found: CircleAnswer,
  last: number,
  isOver: () => boolean,
): CircleAnswer {
  let answer = free(whole, found, [last], "minutes", isOver);
  for (let other = last; answer.starts === null && other >= 0 && !isOver(); other--) {
    answer = free(whole, found, [last, other], "order", isOver);
  }
  return answer;
}

interface Aim {
  readonly pieces: number;
  /** No rotation of all of them takes less. */
  readonly bound: Minutes;
  readonly isOver: () => boolean;
}

function improve(whole: ProblemCircle, first: CircleAnswer, { pieces, bound, isOver }: Aim): CircleAnswer {
  let found = first;
  let idle = 0;
  for (let apart = 0; idle < PATIENCE && (found.span ?? 0) > bound && !isOver(); apart++) {
    idle++;
    for (let one = 0; one < pieces && !isOver(); one++) {
      const hold = apart % 2 === 0 ? "minutes" : "order";
      const other = (one + Math.floor(apart / 2)) % pieces;
      const answer = free(whole, found, [one, other], hold, isOver);
      if (answer.starts === null) continue;
      found = answer;
      idle = 0;
    }
  }
  return { ...found, bound, status: found.span === bound ? "optimal" : "feasible" };
}

/** Solves for some pieces, with the work of all others held. */
function free(
  { circle, work }: ProblemCircle,
  { starts, made, span }: CircleAnswer,
  pieces: readonly number[],
  hold: Hold,
  isOver: () => boolean,
): CircleAnswer {
  const { period, sessions } = circle;
  const minutes = circle.tasks.map((_, index) => {
    const start = starts?.[index];
    const loose = start === undefined || pieces.includes(pieceOf(circle, work, index));
    return loose ? null : mod(start, period);
  });
  const tasks = circle.tasks.map((task, index): CircleTask => {
    const minute = minutes[index] ?? null;
    if (minute === null) return task;
    if (hold === "minutes")
      return made[index] === true ? { ...task, fixed: minute, made: true } : { ...task, fixed: minute };
    const session = sessions.findIndex(({ closes }) => closes > minute);
    const shuts = sessions[session]?.closes ?? period;
    const before = [...minutes.keys()].filter((other) => {
      const its = minutes[other] ?? null;
      return its !== null && its > minute && its < shuts;
    });
    return { ...task, session, before };
  });
  const stop = (nodes: number): boolean => nodes > NODES_A_TRY || isOver();
  // Fewer pieces were placed: any rotation is more than there was.
  const below = starts?.length === tasks.length ? (span ?? undefined) : undefined;
  return solveCircle(
    { ...circle, tasks },
    below === undefined ? { stop, hasty: true } : { stop, hasty: true, below },
  );
}

/** Pieces are alike, so that each has as many tasks as the next. */
function pieceOf({ pieces }: Circle, work: readonly CircleWork[], index: number): number {
  return Math.floor((index * pieces.length) / work.length);
}

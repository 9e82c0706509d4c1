import type { Minutes } from "../../time/instant.ts";
import type { Circle, CircleTask } from "./circle.ts";
import type { CircleWork, ProblemCircle } from "./circle-of-problem.ts";
import { type CircleAnswer, solveCircle } from "./solve-circle.ts";

/** Nodes given to the exact search of one or two pieces among the others. */
const NODES_A_TRY = 300;
/** Rounds without a better rotation before it stays as it is. */
const PATIENCE = 2;

export interface PiecesAsk {
  /** The rotation of so many pieces. A rotation of fewer is a beginning of it: its tasks come first. */
  readonly circleOf: (pieces: number) => ProblemCircle;
  readonly pieces: number;
  readonly isOver: () => boolean;
}

/**
 * A rotation of several alike pieces a period. One piece is solved exactly. More are put in one by one, each exactly
 * among those before it, and then taken out and put back one and two at a time while that helps (a large neighbourhood
 * search whose every move is exact). No rotation has less than so many times the span of one piece alone.
 */
export function solvePieces({ circleOf, pieces, isOver }: PiecesAsk): CircleAnswer {
  let found = solveCircle(circleOf(1).circle, { stop: isOver });
  const alone = found.bound;
  const none = { ...found, starts: null, span: null, bound: alone * pieces };
  for (let count = 2; count <= pieces && found.starts !== null; count++) {
    const whole = circleOf(count);
    const known = solveCircle(whole.circle, { stop: (nodes) => nodes > 1 || isOver() });
    if (known.status === "infeasible") return { ...none, status: "infeasible" };
    found = insert(whole, found, count - 1, isOver);
  }
  if (found.starts === null) return { ...none, status: pieces === 1 ? found.status : "unknown" };
  return pieces === 1 ? found : improve(circleOf(pieces), found, { pieces, alone, isOver });
}

/** Puts one piece more in, alone or together with one of the others taken out again. */
function insert(
  whole: ProblemCircle,
  found: CircleAnswer,
  last: number,
  isOver: () => boolean,
): CircleAnswer {
  for (let other = last; other >= 0; other--) {
    const answer = free(whole, found, [last, other], isOver);
    if (answer.starts !== null || isOver()) return answer;
  }
  return { ...found, status: "unknown", starts: null };
}

interface Aim {
  readonly pieces: number;
  /** The least span of a piece alone. */
  readonly alone: Minutes;
  readonly isOver: () => boolean;
}

function improve(whole: ProblemCircle, first: CircleAnswer, { pieces, alone, isOver }: Aim): CircleAnswer {
  const bound = alone * pieces;
  let found = first;
  let idle = 0;
  for (let apart = 0; idle < PATIENCE && (found.span ?? 0) > bound && !isOver(); apart++) {
    idle++;
    for (let one = 0; one < pieces && !isOver(); one++) {
      const other = (one + apart) % pieces;
      const answer = free(whole, found, [one, other], isOver, found.span ?? undefined);
      if (answer.starts === null) continue;
      found = answer;
      idle = 0;
    }
  }
  return { ...found, bound, status: found.span === bound ? "optimal" : "feasible" };
}

/** Solves for some pieces, with all others where they are. */
function free(
  { circle, work }: ProblemCircle,
  { starts, made }: CircleAnswer,
  pieces: readonly number[],
  isOver: () => boolean,
  below?: Minutes,
): CircleAnswer {
  const { period } = circle;
  const tasks = circle.tasks.map((task, index): CircleTask => {
    const start = starts?.[index];
    if (start === undefined || pieces.includes(pieceOf(circle, work, index))) return task;
    const fixed = ((start % period) + period) % period;
    return made[index] === true ? { ...task, fixed, made: true } : { ...task, fixed };
  });
  const stop = (nodes: number): boolean => nodes > NODES_A_TRY || isOver();
  return solveCircle({ ...circle, tasks }, below === undefined ? { stop } : { stop, below });
}

/** Pieces are alike, so that each has as many tasks as the next. */
function pieceOf({ pieces }: Circle, work: readonly CircleWork[], index: number): number {
  return Math.floor((index * pieces.length) / work.length);
}

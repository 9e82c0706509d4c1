import type { Minutes } from "../../time/instant.ts";
import type { BenchRound } from "./bench-round.ts";
import type { PaceSolver } from "./pace-solver.ts";
import type { Pace, PaceRow } from "./rotation-answer.ts";

const DAY: Minutes = 1_440;
/** Slower than one in so many days is no rotation. */
const SLOWEST_DAYS = 14;
/** More pieces than this in one round are not tried by themselves. */
const MOST_A_ROUND = 7;

/** Nodes given to a row of several pieces a round: enough to find one, seldom to prove it. */
const NODES_A_ROW = 500;

/** The quickest pace for each number out, from 1 up. */
export function paceTable(
  solver: PaceSolver,
  round: BenchRound,
  isOver: () => boolean,
): { readonly rows: readonly PaceRow[]; readonly cut: boolean } {
  const rounds = round.minutes / DAY;
  const found: PaceRow[] = [];
  // One piece in ever more rounds, until one is out at a time.
  for (let days = rounds; days <= SLOWEST_DAYS && !isOver(); days += rounds) {
    const pace = { pieces: 1, days };
    const solved = solver.solve(pace);
    if (solved.is !== "timetable") continue;
    found.push({ out: solved.out, pace, proven: solved.proven });
    if (solved.out === 1) break;
  }
  let cut = isOver();
  // Where one is too many for a round, more are.
  if (solver.solve({ pieces: 1, days: rounds }).is === "impossible")
    return { rows: quickestFirst(found), cut };
  for (let pieces = 2; pieces <= MOST_A_ROUND; pieces++) {
    const pace = { pieces, days: rounds };
    cut ||= isOver();
    const solved = cut ? null : solver.solve(pace, NODES_A_ROW);
    if (solved?.is === "impossible") break;
    if (solved?.is !== "timetable") {
      cut = true;
      break;
    }
    found.push({ out: solved.out, pace, proven: solved.out === solved.leastOut });
  }
  return { rows: quickestFirst(found), cut };
}

/** Of each number out the quickest, and none that is no quicker than one with fewer out. */
function quickestFirst(found: readonly PaceRow[]): PaceRow[] {
  const rows: PaceRow[] = [];
  const byOut = [...found].sort((one, other) => one.out - other.out || perDay(other.pace) - perDay(one.pace));
  for (const row of byOut) {
    if (rows.every(({ pace }) => perDay(pace) < perDay(row.pace))) rows.push(row);
  }
  return rows;
}

/** The quickest with no more out than said. */
export function quickest(rows: readonly PaceRow[], out: number, round: BenchRound): Pace {
  const row = rows.filter((one) => one.out <= out).at(-1);
  return row?.pace ?? { pieces: 1, days: round.minutes / DAY };
}

/** A pace in whole rounds of the bench, in the least numbers that say it. */
export function fitPace({ pieces, days }: Pace, round: BenchRound): Pace {
  const rounds = round.minutes / DAY;
  const common = greatestDivisor(pieces, days);
  const [fewest, least] = [pieces / common, days / common];
  const times = rounds / greatestDivisor(least, rounds);
  return { pieces: fewest * times, days: least * times };
}

function perDay({ pieces, days }: Pace): number {
  return pieces / days;
}

function greatestDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestDivisor(other, one % other);
}

import type { Minutes } from "../../time/instant.ts";
import type { BenchRound } from "./bench-round.ts";
import type { PaceSolver } from "./pace-solver.ts";
import type { Impossible, Pace, PaceRow, Timetable } from "./rotation-answer.ts";

const DAY: Minutes = 1_440;
/** Slower than one in so many days is no rotation. */
const SLOWEST_DAYS = 14;
/** Paces of more than one piece a day that are tried; and how many pieces a week. */
const QUICKER_THAN_DAILY: readonly Pace[] = [
  { pieces: 3, days: 2 },
  { pieces: 2, days: 1 },
];
const MOST_A_WEEK = 12;
/** Where so many are out, nothing quicker is tried. */
const MOST_OUT = 9;

/** A pace that was tried. */
interface Tried {
  readonly pace: Pace;
  readonly found: Timetable | Impossible;
}

/**
 * Solves the paces a table is made of, rising: one piece in several rounds of the bench (a day, a week), from where one
 * is out at a time, and several pieces in one or two rounds, until no quicker ones are found.
 *
 * @returns those that were tried
 */
export function tryPaces(solver: PaceSolver, round: BenchRound, isOver: () => boolean): Pace[] {
  const rounds = round.minutes / DAY;
  const tried: Pace[] = [];
  for (let days = rounds; days <= SLOWEST_DAYS && !isOver(); days += rounds) {
    const pace = { pieces: 1, days };
    tried.unshift(pace);
    const found = solver.solve(pace, "row");
    if (found.is === "timetable" && found.out === 1) break;
  }
  // Where one is too many for a round, more are.
  if (solver.solve({ pieces: 1, days: rounds }, "row").is !== "timetable") return tried;
  for (const pace of quickerThan(round)) {
    if (isOver()) break;
    tried.push(pace);
    const found = solver.solve(pace, "row");
    if (found.is !== "timetable" || found.out >= MOST_OUT) break;
  }
  return tried;
}

/** The quickest pace for each number out, from 1 up, by what is known now of those that were tried. */
export function paceTable(
  solver: PaceSolver,
  paces: readonly Pace[],
): { readonly rows: readonly PaceRow[]; readonly cut: boolean } {
  const tried = paces.map((pace) => ({ pace, found: solver.solve(pace, "row") }));
  return { rows: quickestFor(tried), cut: tried.at(-1)?.found.is !== "impossible" };
}

/** Paces of more than one piece a round, ever quicker. */
function quickerThan({ every, minutes }: BenchRound): readonly Pace[] {
  if (every === "day") return QUICKER_THAN_DAILY;
  return Array.from({ length: MOST_A_WEEK - 1 }, (_, more) => ({ pieces: 2 + more, days: minutes / DAY }));
}

/** Of each number out the quickest pace, where it is quicker than with fewer. `tried` rises in pace. */
function quickestFor(tried: readonly Tried[]): PaceRow[] {
  const rows: PaceRow[] = [];
  for (const [index, { pace, found }] of tried.entries()) {
    if (found.is !== "timetable") continue;
    while ((rows.at(-1)?.out ?? 0) >= found.out) rows.pop();
    rows.push({ out: found.out, pace, proven: needsMore(tried[index + 1]?.found, found.out) });
  }
  return rows;
}

/** Whether the next quicker pace is proven to have more out, or to be impossible: then all quicker ones are too. */
function needsMore(next: Timetable | Impossible | undefined, out: number): boolean {
  return next?.is === "impossible" || (next?.is === "timetable" && next.leastOut > out);
}

/** The quickest with no more out than said; where all have more, the one with the fewest. */
export function quickest(rows: readonly PaceRow[], out: number, round: BenchRound): Pace {
  const row = rows.filter((one) => one.out <= out).at(-1) ?? rows[0];
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

function greatestDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestDivisor(other, one % other);
}

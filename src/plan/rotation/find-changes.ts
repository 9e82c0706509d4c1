import type { PaceSolver } from "./pace-solver.ts";
import type { Change, Impossible, Pace, Timetable } from "./rotation-answer.ts";
import { type SingleChange, singleChanges } from "./single-changes.ts";

/** Of several pieces a period each change is a search of its own: only so many shorter cures are tried. */
const CURES_OF_SEVERAL = 3;

/**
 * What one thing otherwise would give at the same pace: of one piece a period solved exactly, of several as a short search
 * betters the pattern that is known. What shortens it most limits it. Where one piece a period cannot be kept at all: what
 * would make it possible.
 */
export function findChanges(solver: PaceSolver, pace: Pace, now: Timetable | Impossible): Change[] {
  if (pace.pieces > 1 && now.is !== "timetable") return [];
  const [span, out] = now.is === "timetable" ? [now.span, now.out] : [Infinity, Infinity];
  const changes = toTry(singleChanges(solver.problem(1)), pace).flatMap((one): Change[] => {
    const found = solver.solveIf(pace, one);
    const isLess = found !== null && (found.out < out || (found.out === out && found.span < span));
    return isLess ? [{ what: one.what, ...found }] : [];
  });
  return changes.sort((one, other) => one.out - other.out || one.span - other.span);
}

function toTry(changes: readonly SingleChange[], { pieces }: Pace): readonly SingleChange[] {
  if (pieces === 1) return changes;
  const cures = changes.filter(({ what }) => what.kind === "cure");
  return changes.filter((one) => !cures.includes(one) || cures.indexOf(one) < CURES_OF_SEVERAL);
}

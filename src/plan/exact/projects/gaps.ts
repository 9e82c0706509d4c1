import type { Project } from "../project.ts";
import type { Bodies } from "./bodies.ts";
import { addLag, type LongestPaths } from "./longest-paths.ts";

/**
 * Two bodies that get in each other's way: the time from one to the other is at most `atMost` or at least `atLeast`.
 * For two activities that one machine must do, that is "one ends before the other starts, or the other way round".
 */
export interface Gap {
  readonly one: number;
  readonly other: number;
  readonly atMost: number;
  readonly atLeast: number;
}

/**
 * Finds the gaps between all bodies from the pairs of activities that together need more of a resource than there is.
 * Where the lags leave only one side of a gap, that side becomes a lag, until nothing more follows.
 *
 * @param paths between the bodies; lengthened by what follows
 * @returns null when there is no schedule
 */
export function findGaps(project: Project, bodies: Bodies, paths: LongestPaths): readonly Gap[] | null {
  let open = mergeOverlapping(pairsInTheWay(project, bodies));
  for (;;) {
    const left: Gap[] = [];
    for (const gap of open) {
      const { one, other, atMost, atLeast } = gap;
      const least = paths.length[one * paths.size + other] as number;
      const most = -(paths.length[other * paths.size + one] as number);
      if (least >= atLeast || most <= atMost) continue;
      const canBeBefore = least <= atMost;
      const canBeAfter = most >= atLeast;
      if (!canBeBefore && !canBeAfter) return null;
      if (canBeBefore && canBeAfter) left.push(gap);
      else if (canBeAfter) addLag(paths, { from: one, to: other, least: atLeast });
      else addLag(paths, { from: other, to: one, least: -atMost });
    }
    if (left.length === open.length) return left;
    open = left;
  }
}

/** One gap for each two activities that cannot run at once, in the time between their bodies. */
function pairsInTheWay({ activities, capacities }: Project, { body, offset }: Bodies): Gap[] {
  const found: Gap[] = [];
  for (const [first, { duration, demands }] of activities.entries()) {
    for (let second = first + 1; second < activities.length; second++) {
      const rival = activities[second];
      if (rival === undefined || duration === 0 || rival.duration === 0) continue;
      const clash = capacities.some((most, at) => (demands[at] ?? 0) + (rival.demands[at] ?? 0) > most);
      if (!clash) continue;
      const one = body[first] as number;
      const other = body[second] as number;
      const shift = (offset[first] as number) - (offset[second] as number);
      found.push({ one, other, atMost: shift - rival.duration, atLeast: shift + duration });
    }
  }
  return found.map((gap) => (gap.one <= gap.other ? gap : turn(gap)));
}

function turn({ one, other, atMost, atLeast }: Gap): Gap {
  return { one: other, other: one, atMost: -atLeast, atLeast: -atMost };
}

/** Between the same two bodies, gaps that leave no whole time between them are one. */
function mergeOverlapping(gaps: readonly Gap[]): Gap[] {
  const sorted = gaps.toSorted((a, b) => a.one - b.one || a.other - b.other || a.atMost - b.atMost);
  const merged: Gap[] = [];
  for (const gap of sorted) {
    const last = merged.at(-1);
    const same = last !== undefined && last.one === gap.one && last.other === gap.other;
    if (!same || gap.atMost >= last.atLeast) merged.push(gap);
    else if (gap.atLeast > last.atLeast) merged[merged.length - 1] = { ...last, atLeast: gap.atLeast };
  }
  return merged;
}

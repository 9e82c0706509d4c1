import type { Instant } from "../../time/instant.ts";
import type { PieceForecast, PlanChanges } from "../plan-answer.ts";
import type { Score } from "../score.ts";

interface Compared {
  readonly pieces: readonly PieceForecast[];
  readonly score: Score;
}

/** What a what-if changes for the pieces that are tagged, against the plan without it. */
export function comparePlans(without: Compared, withIt: Compared): PlanChanges {
  const before = new Map(without.pieces.map((forecast) => [forecast.piece.tag, forecast]));
  const both = withIt.pieces.flatMap((after) => {
    const found = after.piece.tag === null ? undefined : before.get(after.piece.tag);
    return found === undefined ? [] : [{ before: found, after }];
  });
  const finishes = both.map(({ before: was, after }) => ({
    piece: after.piece,
    without: was.lastHandsOn,
    with: after.lastHandsOn,
  }));
  return {
    finishes: finishes.filter((one) => one.without !== one.with).toSorted((a, b) => delay(b) - delay(a)),
    newlyLate: both.flatMap((one) => (one.after.late && !one.before.late ? [one.after.piece] : [])),
    nowOnTime: both.flatMap((one) => (one.before.late && !one.after.late ? [one.after.piece] : [])),
    amends: withIt.score.amends - without.score.amends,
  };
}

/** How much later; a piece that is no longer finished in the days looked at is the latest of all. */
function delay(one: { readonly without: Instant | null; readonly with: Instant | null }): number {
  return (one.with ?? Number.MAX_SAFE_INTEGER) - (one.without ?? Number.MAX_SAFE_INTEGER);
}

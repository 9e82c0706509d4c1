import { type Coat, STAGES, type Stage } from "../process/coat.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { type CoatTimes, reachedAt } from "./coat-times.ts";
import type { Drying } from "./drying.ts";

/** The furthest stage reached at a moment, of those the coat's sheet names. Before it is laid it counts as wet. */
export function stageAt(times: CoatTimes, now: Instant): Stage {
  return (
    STAGES.findLast((stage) => {
      const moment = times.reaches[stage];
      return moment !== undefined && moment <= now;
    }) ?? "wet"
  );
}

/**
 * How far a coat is on its way to dry-hard (to the last stage its sheet names, where it names no dry-hard), 0 to 1, by
 * the minutes of its sheet that it has come in its air. A coat that names no stage has no way to go: 1.
 */
export function progressAt(coat: Coat, times: CoatTimes, { air, factor }: Drying, now: Instant): number {
  const hard = reachedAt(stagesBySheet(coat), "dry-hard");
  if (hard === null || hard <= 0) return 1;
  const spent = now <= times.laidAt ? 0 : air.spent(coat, times.laidAt, now);
  return Math.min(1, spent / ((hard / MINUTE) * factor));
}

/** The stages of a sheet as if its coat were laid at instant 0. */
export function stagesBySheet({ stages }: Coat): CoatTimes["reaches"] {
  const entries = Object.entries(stages).map(([stage, minutes]) => [stage, minutes * MINUTE]);
  return Object.fromEntries(entries);
}

/** Whether a stage is at least as far as another. `isAtLeast("dry-hard", "tack-free") === true` */
export function isAtLeast(stage: Stage, least: Stage): boolean {
  return STAGES.indexOf(stage) >= STAGES.indexOf(least);
}

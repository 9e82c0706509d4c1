import { STAGES, type Stage } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";
import { type CoatTimes, reachedAt } from "./coat-times.ts";

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
 * How far a coat is on its way to dry-hard (to the last stage its sheet names, where it names no dry-hard), 0 to 1.
 * A coat that names no stage has no way to go: 1.
 */
export function progressAt(times: CoatTimes, now: Instant): number {
  const hard = reachedAt(times.reaches, "dry-hard");
  if (hard === null || hard <= times.laidAt) return 1;
  return Math.min(1, Math.max(0, (now - times.laidAt) / (hard - times.laidAt)));
}

/** Whether a stage is at least as far as another. `isAtLeast("dry-hard", "tack-free") === true` */
export function isAtLeast(stage: Stage, least: Stage): boolean {
  return STAGES.indexOf(stage) >= STAGES.indexOf(least);
}

import type { PlanChanges } from "../plan/plan-answer.ts";
import { sayList } from "./say-list.ts";
import { sayPlannedPiece } from "./say-planned-row.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What a what-if changes against the plan without it, the latest first.
 *
 * @example sayChanges(changes, speech)
 * // ["", "What it changes", "  14 smelt walker finished Sat 15:20, not Fri 19:10", "  late by it: 14 smelt walker"]
 */
export function sayChanges(changes: PlanChanges, speech: Speech): string[] {
  const { finishes, newlyLate, nowOnTime, amends } = changes;
  const lines = finishes.map((one) => {
    const who = sayPlannedPiece(one.piece);
    if (one.with === null) return `${who} not finished in the days looked at`;
    if (one.without === null)
      return `${who} finished ${sayClock(one.with, speech)}, not beyond the days looked at`;
    const than = one.with > one.without ? "not" : "sooner than";
    return `${who} finished ${sayClock(one.with, speech)}, ${than} ${sayClock(one.without, speech)}`;
  });
  if (newlyLate.length > 0) lines.push(`late by it: ${sayList(newlyLate.map(sayPlannedPiece))}`);
  if (nowOnTime.length > 0) lines.push(`on time by it: ${sayList(nowOnTime.map(sayPlannedPiece))}`);
  if (amends !== 0) {
    lines.push(`${sayWait(Math.abs(amends))} ${amends > 0 ? "more" : "less"} of preparing and mending`);
  }
  if (lines.length === 0) lines.push("nothing, for the pieces that are tagged");
  return ["", "What it changes", ...lines.map((line) => `  ${line}`)];
}

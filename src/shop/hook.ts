import { after, type Instant } from "../time/instant.ts";
import { laidBy } from "./laid-coat.ts";
import { lastHang } from "./passes.ts";
import type { Piece } from "./shop.ts";
import { stageMoment } from "./stage-moment.ts";
import { findStep } from "./steps.ts";

/**
 * Until when a piece needs the hook it hangs on: the stage or the time its last step names, else until its coat is
 * dry-hard, else as long as the step's wait. Left hanging longer, it can be taken down for another.
 *
 * @returns null when it is on no hook; positive infinity when only a touch can say
 */
export function hookNeededUntil(piece: Piece, now: Instant): Instant | null {
  const last = lastWorked(piece);
  if (piece.place === null || last === null) return null;
  const { step, hungAt } = last;
  if (step.until !== null && "minutes" in step.until) return after(hungAt, step.until.minutes);
  const laid = laidBy(piece, step);
  if (laid === null) return after(hungAt, step.wait);
  const fit = stageMoment(laid, step.until?.stage ?? "dry-hard", now);
  return typeof fit === "number" ? fit : Number.POSITIVE_INFINITY;
}

/** Of the passes that count, the one hung last, with its step. */
function lastWorked(piece: Piece) {
  const hung = [...piece.work].flatMap(([name, work]) => {
    const step = findStep(piece, name);
    const hang = lastHang(work);
    return step === undefined || hang === null ? [] : [{ step, hungAt: hang.hungAt }];
  });
  return hung.toSorted((a, b) => a.hungAt - b.hungAt).at(-1) ?? null;
}

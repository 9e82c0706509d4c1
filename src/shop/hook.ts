import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Step } from "../process/step.ts";
import { after, type Instant } from "../time/instant.ts";
import { laidBy } from "./laid-coat.ts";
import { lastHang } from "./passes.ts";
import type { Piece } from "./shop.ts";
import { stageMoment } from "./stage-moment.ts";
import { findStep } from "./steps.ts";

/**
 * Until when a piece needs the hook it hangs on: the stage or the time that the step names which hung it last, else until
 * its coat is dry-hard, else as long as the step's wait. Left hanging longer, it can be taken down for another.
 *
 * @returns null when it is on no hook; positive infinity when only a touch can say
 */
export function hookNeededUntil(piece: Piece, now: Instant): Instant | null {
  return piece.place === null ? null : neededUntil(piece, now);
}

/** The place a piece goes back to from work that hangs it nowhere, as its coat still needs to hang there; null: none. */
export function backTo(piece: Piece, step: Step, now: Instant): string | null {
  const place = piece.hungAt.at(-1)?.place ?? NO_PLACE;
  if (place === NO_PLACE || !isBenchWork(step)) return null;
  return (neededUntil(piece, now) ?? now) > now ? place : null;
}

function neededUntil(piece: Piece, now: Instant): Instant | null {
  const last = lastHung(piece);
  if (last === null) return null;
  const { step, hungAt } = last;
  if (step.until !== null && "minutes" in step.until) return after(hungAt, step.until.minutes);
  const laid = laidBy(piece, step);
  if (laid === null) return after(hungAt, step.wait);
  const fit = stageMoment(laid, step.until?.stage ?? "dry-hard", now);
  return typeof fit === "number" ? fit : Number.POSITIVE_INFINITY;
}

/** Of the passes that count, the one hung last, with its step: bench work beside a coat that dries hangs nothing. */
function lastHung(piece: Piece) {
  const hung = [...piece.work].flatMap(([name, work]) => {
    const step = findStep(piece, name);
    const hang = lastHang(work);
    return step === undefined || hang === null ? [] : [{ step, hungAt: hang.hungAt }];
  });
  const byTime = hung.toSorted((a, b) => a.hungAt - b.hungAt);
  return byTime.findLast(({ step }) => !isBenchWork(step)) ?? byTime.at(-1) ?? null;
}

/** Work that lays no coat, waits for nothing after it and hangs the piece nowhere. */
function isBenchWork({ coat, place, wait }: Step): boolean {
  return coat === null && place === null && wait === 0;
}

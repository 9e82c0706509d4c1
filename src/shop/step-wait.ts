import type { Span } from "../cure/coat-times.ts";
import { commonWindows, joinWindows, windowsFrom } from "../cure/windows.ts";
import type { Preparation, Stage } from "../process/coat.ts";
import { coatsBefore } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { after, type Instant } from "../time/instant.ts";
import { type CoatWait, type Need, waitForCoat, waitForPass } from "./coat-wait.ts";
import { type LaidCoat, laidBy } from "./laid-coat.ts";
import { isDone, lastHang, workOf } from "./passes.ts";
import type { Piece, StepWork } from "./shop.ts";
import type { NotByClock } from "./stage-moment.ts";
import { findStep } from "./steps.ts";

/** Everything that the next pass of a step waits for, its steps before being done. */
export interface StepWait {
  /** When it may begin, by opening; those whose preparation is done ask for none. */
  readonly windows: readonly Span[];
  /** The same before plain waits are reckoned: what the coats alone allow. */
  readonly coatWindows: readonly Span[];
  /** End of every plain wait. */
  readonly released: Instant;
  /** The coats it waits on, each with why a touch must speak first, if so. */
  readonly coats: readonly { readonly laid: LaidCoat; readonly notByClock: NotByClock | null }[];
  /** The stage it waits for, where it is not a window. */
  readonly stage: Stage | null;
}

/** What the next pass of a step of a piece waits for, as known at a moment; of steps before it that are not done, nothing. */
export function stepWait(piece: Piece, step: Step, now: Instant): StepWait {
  const work = workOf(piece, step.name);
  const passBefore = lastHang(work);
  const need = needOf(step, work);
  const waits = passBefore === null ? waitsOnCoats(piece, step, need, now) : waitsOnPass(piece, step, now);
  const common = commonWindows(waits.map(({ windows }) => windows));
  const coatWindows = joinWindows(withoutDone(common, work.prepared?.at ?? null));
  // The flash-off of a coat is in its windows, as the air lets it; a pass without a coat has only its minutes.
  const released =
    passBefore === null
      ? releasedAt(piece, step, work)
      : after(passBefore.hungAt, waits.length > 0 ? 0 : (passBefore.flashOff ?? 0));
  return {
    windows: windowsFrom(coatWindows, released),
    coatWindows,
    released,
    coats: waits.map(({ laid, notByClock }) => ({ laid, notByClock })),
    stage:
      passBefore === null && waits.length > 0 ? (need.stage ?? (need.laysCoat ? null : "dry-hard")) : null,
  };
}

/** The work a window asks for at a moment or, if none runs, the next that will; null: none asks for any. */
export function preparationAsked(piece: Piece, step: Step, now: Instant): Preparation | null {
  const { windows } = stepWait(piece, step, now);
  const ahead = windows.filter(({ shuts }) => shuts === null || now < shuts);
  return ahead[0]?.first ?? ahead.find(({ first }) => first !== null)?.first ?? null;
}

type WaitOnCoat = CoatWait & { readonly laid: LaidCoat };

function needOf(step: Step, work: StepWork): Need {
  return { laysCoat: step.coat !== null, stage: step.waitsFor, sentBack: work.sentBack };
}

function waitsOnCoats(piece: Piece, step: Step, need: Need, now: Instant): readonly WaitOnCoat[] {
  return coatsBefore(piece.route, step.name).flatMap((before) => {
    const laid = isDone(piece, before) ? laidBy(piece, before) : null;
    return laid === null ? [] : { laid, ...waitForCoat(laid, need, now) };
  });
}

function waitsOnPass(piece: Piece, step: Step, now: Instant): readonly WaitOnCoat[] {
  const laid = laidBy(piece, step);
  return laid === null ? [] : [{ laid, ...waitForPass(laid, now) }];
}

/** When plain waits end: those of the steps before, a mend, and at first the tagging. */
function releasedAt(piece: Piece, step: Step, work: StepWork): Instant {
  const ends = step.after.flatMap((name) => {
    const before = findStep(piece, name);
    const hang = before === undefined ? null : lastHang(workOf(piece, name));
    return before === undefined || hang === null ? [] : after(hang.hungAt, before.wait);
  });
  return Math.max(
    work.sentBack?.at ?? Number.NEGATIVE_INFINITY,
    ...(ends.length === 0 ? [piece.taggedAt] : ends),
  );
}

/**
 * The windows with the preparation struck out that has been done: one done in a window or in the one before it serves
 * it (a scuff ten minutes before a window shuts is still a scuff).
 */
function withoutDone(windows: readonly Span[], preparedAt: Instant | null): readonly Span[] {
  if (preparedAt === null) return windows;
  return windows.map((window, index) => {
    const since = windows[index - 1]?.opens ?? Number.NEGATIVE_INFINITY;
    return preparedAt >= since ? { ...window, first: null } : window;
  });
}

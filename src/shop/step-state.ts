import type { Span } from "../cure/coat-times.ts";
import type { Step } from "../process/step.ts";
import type { Instant } from "../time/instant.ts";
import { handOn } from "./hands.ts";
import type { Moment } from "./moment.ts";
import { isDone, lastHang, workOf } from "./passes.ts";
import type { InHand, Piece } from "./shop.ts";
import type { StepState } from "./states.ts";
import { type StepWait, stepWait } from "./step-wait.ts";
import { findStep, stepsUndoneBefore } from "./steps.ts";
import { isForgotten } from "./usual-hang.ts";

/**
 * What may happen with one step of a piece at a moment.
 *
 * @throws RangeError when the piece's route has no such step: the caller made it up
 */
export function stepState(piece: Piece, stepName: string, at: Moment): StepState {
  const step = findStep(piece, stepName);
  if (step === undefined) throw new RangeError(`the route of ${piece.tag} has no step "${stepName}"`);
  if (piece.end !== null) return { is: "ended", how: piece.end.how };
  const hand = handOn(piece, stepName);
  if (hand !== null) return inHandState(piece, hand, at);
  if (isDone(piece, step)) {
    return { is: "done", at: lastHang(workOf(piece, stepName))?.hungAt ?? piece.taggedAt };
  }
  const by = stepsUndoneBefore(piece, step);
  if (by.length > 0) return { is: "blocked", by };
  return waitingState(stepWait(piece, step, at.now), step, at.now);
}

/** The state of every step of a piece, by name, in working order. */
export function stepStates(piece: Piece, at: Moment): Map<string, StepState> {
  return new Map(piece.route.map(({ name }) => [name, stepState(piece, name, at)]));
}

function inHandState(piece: Piece, hand: InHand, at: Moment): StepState {
  if (hand.takenAt === null) return { is: "left", since: hand.leftAt ?? hand.since, part: hand.part };
  return { is: "in hand", since: hand.since, part: hand.part, forgotten: isForgotten(piece, hand, at) };
}

function waitingState(wait: StepWait, step: Step, now: Instant): StepState {
  const index = wait.windows.findIndex(({ shuts }) => shuts === null || now < shuts);
  const window = wait.windows[index];
  if (window === undefined) return shutForGood(wait, step);
  const needsTouch = wait.coats.find(({ notByClock }) => notByClock !== null);
  if (needsTouch?.notByClock) {
    return {
      ...dryingOn(wait, window),
      opens: null,
      because: needsTouch.notByClock,
      coat: needsTouch.laid.name,
      step: needsTouch.laid.step,
    };
  }
  if (window.opens === Number.POSITIVE_INFINITY) {
    return { ...dryingOn(wait, window), opens: null, because: "air" };
  }
  if (now < window.opens) return { ...dryingOn(wait, window), because: whyNotYet(wait, window, now) };
  return window.first === null ? openState(wait, index, window) : shutState(wait, window, step);
}

/** A moment that a coat does not reach in the air it hangs in is none. */
const unlessNever = (moment: Instant | null): Instant | null =>
  moment === Number.POSITIVE_INFINITY ? null : moment;

type Drying = Extract<StepState, { is: "drying" }>;

function dryingOn(wait: StepWait, window: Span): Drying {
  const under = limiting(wait, window);
  return {
    is: "drying",
    opens: window.opens,
    shuts: unlessNever(window.shuts),
    because: "window",
    coat: under?.name ?? null,
    step: under?.step ?? null,
    stage: wait.stage,
    preparation: window.first,
  };
}

function whyNotYet(wait: StepWait, window: Span, now: Instant): Drying["because"] {
  if (wait.windows.some(({ shuts }) => shuts !== null && shuts <= now)) return "between windows";
  const byCoats = wait.coatWindows.find(({ shuts }) => shuts === window.shuts)?.opens;
  if (wait.released === window.opens && byCoats !== window.opens) return "wait";
  return wait.stage === null ? "window" : "stage";
}

function openState(wait: StepWait, index: number, window: Span): StepState {
  const next = wait.windows[index + 1];
  return {
    is: "open",
    since: window.opens,
    shuts: unlessNever(window.shuts),
    preparationAfter: next?.first ?? null,
    opensAgain: next !== undefined,
    nextOpens: unlessNever(next?.opens ?? null),
  };
}

function shutState(wait: StepWait, window: Span, step: Step): StepState {
  const under = limiting(wait, window);
  // The window before may be gone from `windows`: a plain wait, or what sent the piece back, was over only later.
  const before = wait.coatWindows[wait.coatWindows.findIndex(({ shuts }) => shuts === window.shuts) - 1];
  return {
    is: "shut",
    since: before?.shuts ?? window.opens,
    preparation: window.first,
    shuts: unlessNever(window.shuts),
    coat: under?.name ?? "",
    step: under?.step ?? step.name,
  };
}

/** No window is left: only a mend from the coat helps. */
function shutForGood(wait: StepWait, step: Step): StepState {
  const since = wait.coatWindows.at(-1)?.shuts ?? wait.released;
  const under = wait.coats.at(-1)?.laid;
  return {
    is: "shut",
    since,
    preparation: null,
    shuts: null,
    coat: under?.name ?? "",
    step: under?.step ?? step.name,
  };
}

/** Of several coats the one a window's opening comes from, else the one laid last. */
function limiting({ coats }: StepWait, window: Span) {
  const laid = coats.map((one) => one.laid);
  return (
    laid.find(({ times }) => times.windows.some(({ opens }) => opens === window.opens)) ??
    laid.toSorted((a, b) => b.hang.hungAt - a.hang.hungAt)[0] ??
    null
  );
}

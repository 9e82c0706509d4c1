import type { JournalEvent } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import { handsOf, isSameWork, minutesInHand, setHands } from "./hands.ts";
import { isDone, nextPassNumber, workOf } from "./passes.ts";
import type { Misfit, PieceDraft } from "./piece-draft.ts";
import type { Piece } from "./shop.ts";
import { findStep, stepsUndoneBefore } from "./steps.ts";

type Taken = Extract<JournalEvent, { kind: "taken" }>;
type Left = Extract<JournalEvent, { kind: "left" }>;

/**
 * The step that work is done on, if it fits what the piece is; else why not, in words. That a coat is laid too early or
 * too late is no misfit: it is a fact, and the act said why.
 */
export function stepToWork(
  piece: Piece,
  { step: name, pass }: { readonly step: string; readonly pass: number },
  another: boolean,
): Step | string {
  const step = findStep(piece, name);
  if (piece.end !== null) return `it is ${piece.end.how}`;
  if (step === undefined) return `its route has no step "${name}"`;
  if (isDone(piece, step) && !(another && step.passes === "scheme")) return `"${name}" is done`;
  if (pass < nextPassNumber(workOf(piece, name))) return `pass ${pass} of "${name}" was hung before`;
  const undone = stepsUndoneBefore(piece, step);
  return undone.length === 0 ? step : `"${undone.join('" and "')}" must come before "${name}"`;
}

/** Takes a piece in hand; work on it that lay half-done goes on. */
export function take(piece: PieceDraft, event: Taken): Misfit {
  const step = stepToWork(piece, event, event.another);
  if (typeof step === "string") return step;
  const { running, lying } = handsOf(piece);
  if (running !== null) return `"${running.step}" is in hand`;
  const before = lying.find((hand) => isSameWork(hand, event.step, event.part));
  setHands(piece, {
    running: {
      step: step.name,
      pass: event.pass,
      part: event.part,
      colour: event.colour ?? before?.colour ?? null,
      another: event.another,
      since: before?.since ?? event.at,
      takenAt: event.at,
      leftAt: before?.leftAt ?? null,
      minutesBefore: before?.minutesBefore ?? 0,
      act: event.act,
      together: Math.max(1, event.together),
    },
    lying: lying.filter((one) => one !== before),
  });
  piece.begunAt ??= event.at;
  piece.place = null;
  return null;
}

/** Puts a piece down half-done: its minutes are kept, the time until it is taken again does not count. */
export function leave(piece: PieceDraft, event: Left): Misfit {
  const { running, lying } = handsOf(piece);
  if (running === null || !isSameWork(running, event.step, event.part)) {
    return `"${event.step}" is not in hand`;
  }
  const left = {
    ...running,
    takenAt: null,
    leftAt: event.at,
    minutesBefore: minutesInHand(running, event.at),
  };
  setHands(piece, { running: null, lying: [...lying, left] });
  return null;
}

import type { JournalEvent } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import { handOn, handsOf, isSameWork, minutesInHand, withHands } from "./hands.ts";
import { isDone, nextPassNumber, workOf } from "./passes.ts";
import type { InHand, Piece } from "./shop.ts";

type Taken = Extract<JournalEvent, { kind: "taken" }>;
type Left = Extract<JournalEvent, { kind: "left" }>;

/** Why work on a step of a piece does not fit what the piece is, in words; null: it fits. */
export function misfitOfWork(
  piece: Piece,
  event: { readonly step: string; readonly pass: number; readonly another: boolean },
): string | null {
  const step = findStep(piece, event.step);
  if (piece.end !== null) return `it is ${piece.end.how}`;
  if (step === undefined) return `its route has no step "${event.step}"`;
  if (isDone(piece, step) && !(event.another && step.passes === "scheme")) return `"${step.name}" is done`;
  if (event.pass < nextPassNumber(workOf(piece, step.name))) {
    return `pass ${event.pass} of "${step.name}" was hung before`;
  }
  const undone = stepsUndoneBefore(piece, step);
  return undone.length === 0 ? null : `"${undone.join('" and "')}" must come before "${step.name}"`;
}

/** A piece taken in hand; work on it that lay half-done goes on. */
export function take(piece: Piece, event: Taken): Piece | string {
  const misfit = misfitOfWork(piece, event);
  if (misfit !== null) return misfit;
  const { running, lying } = handsOf(piece);
  if (running !== null) return `"${running.step}" is in hand`;
  const before = lying.find((hand) => isSameWork(hand, event.step, event.part));
  const hand: InHand = {
    step: event.step,
    pass: event.pass,
    part: event.part,
    colour: event.colour ?? before?.colour ?? null,
    another: event.another,
    since: before?.since ?? event.at,
    takenAt: event.at,
    minutesBefore: before?.minutesBefore ?? 0,
    act: event.act,
    together: Math.max(1, event.together),
  };
  return withHands(
    { ...piece, begunAt: piece.begunAt ?? event.at, place: null },
    { running: hand, lying: lying.filter((one) => one !== before) },
  );
}

/** A piece put down half-done: its minutes are kept, the time until it is taken again does not count. */
export function leave(piece: Piece, event: Left): Piece | string {
  const { running, lying } = handsOf(piece);
  if (running === null || !isSameWork(running, event.step, event.part))
    return `"${event.step}" is not in hand`;
  const left = { ...running, takenAt: null, minutesBefore: minutesInHand(running, event.at) };
  return withHands(piece, { running: null, lying: [...lying, left] });
}

export function findStep(piece: Pick<Piece, "route">, name: string): Step | undefined {
  return piece.route.find((step) => step.name === name);
}

/** The steps that a step waits for and that are not done, by name; one more pass in hand is not done either. */
export function stepsUndoneBefore(piece: Piece, step: Step): readonly string[] {
  return piece.route
    .filter(({ name }) => step.after.includes(name))
    .filter((before) => !isDone(piece, before) || handOn(piece, before.name) !== null)
    .map(({ name }) => name);
}

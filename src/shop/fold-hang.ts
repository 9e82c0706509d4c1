import { NO_PLACE } from "../cure/hanging-air.ts";
import type { JournalEvent, SchemePass } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";
import { stepToWork } from "./fold-work.ts";
import { handOn, handsOf, isSameWork, minutesInHand, setHands } from "./hands.ts";
import { coloursLeft, nextPass, workOf } from "./passes.ts";
import type { Misfit, PieceDraft } from "./piece-draft.ts";
import { preparationsBefore } from "./preparations-before.ts";
import { sendBack } from "./send-back.ts";
import type { Hang, InHand, Piece } from "./shop.ts";
import { findStep } from "./steps.ts";

type Hung = Extract<JournalEvent, { kind: "hung" }>;

/** Hangs a pass, or ends a preparation: every wait after it counts from here. */
export function hang(piece: PieceDraft, event: Hung): Misfit {
  const another = event.another || (handOn(piece, event.step)?.another ?? false);
  const step = stepToWork(piece, event, another);
  if (typeof step === "string") return step;
  const { running, lying } = handsOf(piece);
  if (running !== null && running.step !== event.step) return `"${running.step}" is in hand`;
  const answer = answerOf(piece, step, event);
  if (typeof answer === "string") return answer;
  const hands = running === null ? lying : [running, ...lying];
  const hand = hands.find((one) => isSameWork(one, event.step, event.part)) ?? null;
  setHands(piece, { running: null, lying: lying.filter((one) => one.step !== event.step) });
  piece.begunAt ??= hand?.since ?? event.at;
  piece.place = event.place;
  piece.hungAt = [...piece.hungAt, { at: event.at, place: event.place ?? NO_PLACE }];
  if (event.part === "preparation") {
    const minutes = hand === null ? null : minutesInHand(hand, event.at);
    piece.work.set(step.name, { ...workOf(piece, step.name), prepared: { at: event.at, minutes } });
  } else {
    addPass(piece, step, event, hand, another);
    if (answer !== null) goBack(piece, step, event, answer.backTo);
  }
  return null;
}

function addPass(piece: PieceDraft, step: Step, event: Hung, hand: InHand | null, another: boolean): void {
  const work = workOf(piece, step.name);
  const colour = event.colour ?? hand?.colour ?? nextPass(piece, step)?.colour ?? null;
  const pass: Hang = {
    pass: event.pass,
    takenAt: hand?.since ?? null,
    hungAt: event.at,
    minutes: hand === null ? null : minutesInHand(hand, event.at),
    // What was put down and then hung without being taken up again took longer than is known.
    guessed: event.guessed || (hand !== null && hand.takenAt === null),
    colour,
    flashOff: event.flashOff ?? nextPass(piece, step, colour)?.flashOff ?? null,
    touches: [],
    came: false,
    preparedFirst: work.prepared === null ? null : (work.prepared.minutes ?? usualPreparation(piece, step)),
  };
  piece.scheme = schemeAsSprayed(piece, step, pass, another);
  piece.work.set(step.name, { ...work, hangs: [...work.hangs, pass], prepared: null, sentBack: null });
}

function goBack(piece: PieceDraft, step: Step, event: Hung, to: string): void {
  const sentBack = { at: event.at, step: step.name, answer: event.result ?? "", to };
  piece.sentBack = [...piece.sentBack, sentBack];
  sendBack(piece, to, { at: event.at, levelled: false }, step.name);
}

/** The step that an answer sends a piece back to; null: on, as where the step asks for none. In words: a misfit. */
function answerOf(piece: Piece, step: Step, event: Hung): { readonly backTo: string } | string | null {
  if (event.part === "preparation" || step.result === null || event.result === null) return null;
  const answer = Object.hasOwn(step.result, event.result) ? step.result[event.result] : undefined;
  if (answer === undefined) return `"${step.name}" has no answer "${event.result}"`;
  if ("goes" in answer) return null;
  return findStep(piece, answer.backTo) === undefined ? `its route has no step "${answer.backTo}"` : answer;
}

/** The scheme with a pass as it was really sprayed: in that place, with its minutes and flash-off where known. */
function schemeAsSprayed(piece: Piece, step: Step, pass: Hang, another: boolean): readonly SchemePass[] {
  if (step.passes === "one" || pass.colour === null) return piece.scheme;
  const planned = nextPass(piece, step, pass.colour);
  if (planned === null && !another) return piece.scheme;
  const sprayed: SchemePass = {
    colour: pass.colour,
    minutes:
      pass.minutes === null || pass.guessed
        ? (planned?.minutes ?? null)
        : Math.max(1, Math.round(pass.minutes)),
    flashOff: pass.flashOff,
  };
  const left = coloursLeft(piece, step);
  const before = piece.scheme.filter((one) => !left.includes(one));
  return [...before, sprayed, ...left.filter((one) => one !== planned)];
}

/** Usual minutes of the preparation that a coat before a step may ask for; 0 where none asks for any. */
function usualPreparation(piece: Piece, step: Step): Minutes {
  return preparationsBefore(piece, step.name)[0]?.handsOn.likely ?? 0;
}

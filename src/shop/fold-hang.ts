import type { JournalEvent, SchemePass } from "../journal/event.ts";
import { coatsBefore } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";
import { findStep, misfitOfWork } from "./fold-work.ts";
import { handOn, handsOf, isSameWork, minutesInHand, withHands } from "./hands.ts";
import { coloursLeft, nextPass, workOf } from "./passes.ts";
import { sendBack } from "./send-back.ts";
import type { Hang, InHand, Piece, StepWork } from "./shop.ts";

type Hung = Extract<JournalEvent, { kind: "hung" }>;

/** A pass or a preparation done: every wait after it counts from here. */
export function hang(piece: Piece, event: Hung): Piece | string {
  const another = event.another || (handOn(piece, event.step)?.another ?? false);
  const misfit = misfitOfWork(piece, { ...event, another });
  if (misfit !== null) return misfit;
  const step = findStep(piece, event.step);
  const { running, lying } = handsOf(piece);
  if (step === undefined || (running !== null && running.step !== event.step)) {
    return `"${running?.step}" is in hand`;
  }
  const hand =
    [running, ...lying].find((one) => one !== null && isSameWork(one, event.step, event.part)) ?? null;
  const put = withHands(
    { ...piece, begunAt: piece.begunAt ?? hand?.since ?? event.at, place: event.place },
    { running: null, lying: lying.filter((one) => one.step !== event.step) },
  );
  return event.part === "preparation" ? prepare(put, event, hand) : finishPass(put, step, event, hand);
}

function prepare(piece: Piece, event: Hung, hand: InHand | null): Piece {
  const minutes = hand === null ? null : minutesInHand(hand, event.at);
  return withWork(piece, event.step, { ...workOf(piece, event.step), prepared: { at: event.at, minutes } });
}

function finishPass(piece: Piece, step: Step, event: Hung, hand: InHand | null): Piece | string {
  const answer = answerOf(piece, step, event);
  if (typeof answer === "string") return answer;
  const work = workOf(piece, step.name);
  const colour = event.colour ?? hand?.colour ?? nextPass(piece, step)?.colour ?? null;
  const said = nextPass(piece, step, colour);
  const minutes = hand === null ? null : minutesInHand(hand, event.at);
  const pass: Hang = {
    pass: event.pass,
    takenAt: hand?.since ?? null,
    hungAt: event.at,
    minutes,
    // What was put down and then hung without being taken up again took longer than is known.
    guessed: event.guessed || (hand !== null && hand.takenAt === null),
    colour,
    flashOff: event.flashOff ?? said?.flashOff ?? null,
    touches: [],
    came: false,
    preparedFirst: work.prepared === null ? null : (work.prepared.minutes ?? usualPreparation(piece, step)),
  };
  const hung = withWork(
    { ...piece, scheme: schemeAsSprayed(piece, step, pass, event.another || (hand?.another ?? false)) },
    step.name,
    { ...work, hangs: [...work.hangs, pass], prepared: null, notBefore: null },
  );
  if (answer.backTo === null) return hung;
  const sentBack = { at: event.at, step: step.name, answer: event.result ?? "", to: answer.backTo };
  return sendBack({ ...hung, sentBack: [...hung.sentBack, sentBack] }, answer.backTo, event.at, step.name);
}

/** Where the answer of a step with a result leads; null: on, as where the step asks for none. In words: a misfit. */
function answerOf(piece: Piece, step: Step, event: Hung): { readonly backTo: string | null } | string {
  if (step.result === null || event.result === null) return { backTo: null };
  const answer = Object.hasOwn(step.result, event.result) ? step.result[event.result] : undefined;
  if (answer === undefined) return `"${step.name}" has no answer "${event.result}"`;
  if ("goes" in answer) return { backTo: null };
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
  const windows = coatsBefore(piece.route, step.name).flatMap(
    ({ coat }) => piece.coats[coat ?? ""]?.windows ?? [],
  );
  return windows.find(({ first }) => first !== null)?.first?.handsOn.likely ?? 0;
}

function withWork(piece: Piece, step: string, work: StepWork): Piece {
  return { ...piece, work: new Map(piece.work).set(step, work) };
}

import type { Step } from "../process/step.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { nextSession, sessionAt } from "../time/sessions.ts";
import type { Moment } from "./moment.ts";
import type { InHand, Piece } from "./shop.ts";
import { preparationAsked } from "./step-wait.ts";
import { findStep } from "./steps.ts";

/** Work begun while the bench is shut belongs to the session that opens within this time, else ends with it. */
const OUT_OF_HOURS: Minutes = 12 * 60;

/** Both ends of when a step in hand can have been hung. */
export interface UsualHang {
  /** If it took as long as usual. */
  readonly usual: Instant;
  /** If it took until the bench shut, or until now. */
  readonly latest: Instant;
}

/**
 * When a step in hand was hung, if the maker forgot to say: after its usual minutes (of each piece worked together),
 * and at the latest when the bench shut.
 *
 * @param usualMinutes hands-on of one piece; what it had before it was left is taken off
 *
 * Taken Tue 20:30, usually 8 min, the bench open until 21:00: 20:38 and 21:00.
 */
export function usualHang(hand: InHand, usualMinutes: Minutes, at: Moment): UsualHang {
  const takenAt = hand.takenAt ?? hand.since;
  const left = Math.max(0, usualMinutes - hand.minutesBefore) * hand.together;
  const usual = Math.min(after(takenAt, Math.ceil(left)), Math.max(at.now, takenAt));
  return { usual, latest: Math.max(usual, Math.min(workEnds(takenAt, at), at.now)) };
}

/**
 * Usual minutes of what is in hand: of the step, of its pass as the scheme has it, or of the preparation its window asked
 * for.
 *
 * @param usualMinutes hands-on of a step of a process
 */
export function usualInHand(
  piece: Piece,
  step: Step,
  hand: InHand,
  usualMinutes: (process: string, step: Step) => Minutes,
): Minutes {
  if (hand.part === "preparation")
    return Math.ceil(preparationAsked(piece, step, hand.since)?.handsOn.likely ?? 0);
  const pass = hand.colour === null ? null : piece.scheme.find(({ colour }) => colour === hand.colour);
  return pass?.minutes ?? usualMinutes(piece.definition.name, step);
}

/**
 * Whether a step in hand was most likely hung without a word: the bench session it was taken in has ended, and even
 * its highest hands-on time has passed.
 */
export function isForgotten(piece: Piece, hand: InHand, at: Moment): boolean {
  if (hand.takenAt === null) return false;
  const step = findStep(piece, hand.step);
  const high = step === undefined ? 0 : highMinutes(piece, step, hand);
  const enough = after(hand.takenAt, Math.max(0, high - hand.minutesBefore) * hand.together);
  return at.now >= enough && at.now >= workEnds(hand.takenAt, at);
}

function highMinutes(piece: Piece, step: Step, hand: InHand): Minutes {
  if (hand.part === "step") return step.handsOn.high;
  return preparationAsked(piece, step, hand.since)?.handsOn.high ?? 0;
}

/** When the bench session ends that work taken at a moment belongs to. */
function workEnds(takenAt: Instant, { zone, hours }: Moment): Instant {
  const end = after(takenAt, OUT_OF_HOURS);
  const during = sessionAt(hours, zone, takenAt);
  if (during !== null) return during.closes;
  const next = nextSession(hours, zone, takenAt);
  return next !== null && next.opens < end ? next.closes : end;
}

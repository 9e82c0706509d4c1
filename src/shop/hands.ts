import type { Part } from "../journal/event.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { PieceDraft } from "./piece-draft.ts";
import type { InHand, Piece } from "./shop.ts";

/** The step of a piece that is in hand this moment, and those lying half-done, oldest first. */
export interface Hands {
  readonly running: InHand | null;
  readonly lying: readonly InHand[];
}

export function handsOf(piece: Pick<Piece, "hand" | "alsoLeft">): Hands {
  const { hand, alsoLeft } = piece;
  if (hand === null) return { running: null, lying: alsoLeft };
  return hand.takenAt === null
    ? { running: null, lying: [...alsoLeft, hand] }
    : { running: hand, lying: alsoLeft };
}

/** Puts these in hand and lays these down. */
export function setHands(piece: PieceDraft, { running, lying }: Hands): void {
  piece.hand = running ?? lying.at(-1) ?? null;
  piece.alsoLeft = running === null ? lying.slice(0, -1) : lying;
}

/** What is in hand or lies half-done of one step; null: neither. */
export function handOn(piece: Pick<Piece, "hand" | "alsoLeft">, step: string): InHand | null {
  if (piece.hand?.step === step) return piece.hand;
  return piece.alsoLeft.find((hand) => hand.step === step) ?? null;
}

/** Whether two pieces of work are the same one. */
export function isSameWork(hand: InHand, step: string, part: Part): boolean {
  return hand.step === step && hand.part === part;
}

/**
 * Minutes in hand by a moment, this piece's share where several are worked together, to the hundredth.
 *
 * Three pieces taken in one act and hung 12 min later: 4 min each.
 */
export function minutesInHand(hand: InHand, until: Instant): Minutes {
  const running = hand.takenAt === null ? 0 : Math.max(0, until - hand.takenAt) / MINUTE / hand.together;
  return Math.round((hand.minutesBefore + running) * 100) / 100;
}

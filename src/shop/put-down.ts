import { localTime } from "../time/civil.ts";
import { handsOf } from "./hands.ts";
import type { Moment } from "./moment.ts";
import { handsAt } from "./settings-at.ts";
import type { InHand, Piece, Shop } from "./shop.ts";
import { findStep } from "./steps.ts";
import { isForgotten } from "./usual-hang.ts";

/** A piece with what is in hand of it. */
export interface PieceInHand {
  readonly piece: Piece;
  readonly hand: InHand;
}

/** Pieces taken in one act: they are in one pair of hands. */
export type HandGroup = readonly PieceInHand[];

/** How hands are freed for work that is to begin. */
export interface PutDown {
  /** What is put down for it; none where a pair of hands is free. */
  readonly leaving: readonly HandGroup[];
  /** What must be hung first, as no hands can be freed; null: they can. */
  readonly stuck: HandGroup | null;
}

/**
 * What must be put down so that a pair of hands is free for work on these pieces: what may be left, the longest in hand
 * first. What these very pieces have in hand takes no other pair.
 *
 * Two pairs of hands, 1 being sanded: nothing is put down for 2. One pair: 1 is left.
 */
export function putDownFor(working: readonly Piece[], shop: Shop, at: Moment): PutDown {
  const others = groupsInHand(shop)
    .map((group) => group.filter(({ piece }) => !working.includes(piece)))
    .filter((group) => group.length > 0)
    .toSorted((a, b) => takenAt(a) - takenAt(b));
  const tooMany = Math.max(0, others.length + 1 - pairsOfHands(shop, at));
  const leaving = others.filter((group) => mayBeLeft(group, at)).slice(0, tooMany);
  const stuck = leaving.length < tooMany ? others.find((group) => !leaving.includes(group)) : undefined;
  return { leaving, stuck: stuck ?? null };
}

/** Whether work in hand may be put down: a coat half laid, or work forgotten in an earlier session, must be hung first. */
export function mayBeLeft(group: HandGroup, at: Moment): boolean {
  return group.every(({ piece, hand }) => !isHalfLaid(piece, hand) && !isForgotten(piece, hand, at));
}

/** Whether what is in hand is a coat being laid. Its preparation may be left. */
export function isHalfLaid(piece: Piece, hand: InHand): boolean {
  return hand.part === "step" && (findStep(piece, hand.step)?.coat ?? null) !== null;
}

function pairsOfHands({ settings }: Shop, { zone, now }: Moment): number {
  return Math.max(1, handsAt(settings, localTime(zone, now).date));
}

/** What is in hand now, by the act that took it. */
function groupsInHand(shop: Shop): readonly HandGroup[] {
  const groups = new Map<number, PieceInHand[]>();
  for (const piece of shop.pieces.values()) {
    const hand = handsOf(piece).running;
    if (hand) groups.set(hand.act, [...(groups.get(hand.act) ?? []), { piece, hand }]);
  }
  return [...groups.values()];
}

function takenAt(group: HandGroup): number {
  return group[0]?.hand.takenAt ?? 0;
}

import type { NewEvent } from "../journal/event.ts";
import { handsOf } from "../shop/hands.ts";
import { handsAt } from "../shop/settings-at.ts";
import type { InHand, Piece, Shop } from "../shop/shop.ts";
import { stepState } from "../shop/step-state.ts";
import { localTime } from "../time/civil.ts";
import type { Work } from "./choose-work.ts";
import { contextAt, type DecideContext } from "./context.ts";
import { isHalfLaid, leaveAll } from "./leave.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";

interface Held {
  readonly piece: Piece;
  readonly hand: InHand;
}

/**
 * Frees a pair of hands for work that is to begin: what is in hand is left where it may be, the longest in hand first.
 * Pieces taken in one act are in one pair of hands. A coat half laid, or work forgotten since an earlier session,
 * must be hung first: the refusal asks about it.
 *
 * @returns the events that leave it; none where hands are free
 */
export function freeHands(
  works: readonly Work[],
  at: number,
  shop: Shop,
  context: DecideContext,
): readonly NewEvent[] | Refused {
  const pairs = Math.max(1, handsAt(shop.settings, localTime(context.zone, at).date));
  const others = groupsInHand(shop)
    .map((group) => group.filter(({ piece }) => works.every((work) => work.piece !== piece)))
    .filter((group) => group.length > 0)
    .sort((a, b) => takenAt(a) - takenAt(b));
  const tooMany = Math.max(0, others.length + 1 - pairs);
  const leaving = others.filter((group) => mayBeLeft(group, at, context)).slice(0, tooMany);
  const stuck = others.find((group) => !leaving.includes(group));
  if (stuck && leaving.length < tooMany) return refuseOther(works, stuck);
  const own = leaveOwnWork(works, at, shop, context);
  if (isRefused(own)) return own;
  const events: NewEvent[] = [...own];
  for (const group of leaving) {
    const left = leaveAll(at, group, shop);
    if (isRefused(left)) return refuseOther(works, group);
    events.push(...left);
  }
  return events;
}

/** Leaves another step that these very pieces have in hand: a piece is in one hand at a time. */
export function leaveOwnWork(
  works: readonly Work[],
  at: number,
  shop: Shop,
  context: DecideContext,
): readonly NewEvent[] | Refused {
  const events: NewEvent[] = [];
  for (const { piece, step } of works) {
    const hand = handsOf(piece).running;
    if (!hand || hand.step === step.name) continue;
    const left = mayBeLeft([{ piece, hand }], at, context) ? leaveAll(at, [{ piece, hand }], shop) : null;
    if (!left || isRefused(left)) return refuseOther(works, [{ piece, hand }]);
    events.push(...left);
  }
  return events;
}

/** What is in hand now, by the act that took it. */
function groupsInHand(shop: Shop): readonly (readonly Held[])[] {
  const groups = new Map<number, Held[]>();
  for (const piece of shop.pieces.values()) {
    const hand = handsOf(piece).running;
    if (hand) groups.set(hand.act, [...(groups.get(hand.act) ?? []), { piece, hand }]);
  }
  return [...groups.values()];
}

function mayBeLeft(group: readonly Held[], at: number, context: DecideContext): boolean {
  return group.every(({ piece, hand }) => {
    const state = stepState(piece, hand.step, contextAt(context, at));
    return !isHalfLaid(piece, hand) && !(state.is === "in hand" && state.forgotten);
  });
}

function takenAt(group: readonly Held[]): number {
  return group[0]?.hand.takenAt ?? 0;
}

function refuseOther(works: readonly Work[], group: readonly Held[]): Refused {
  const [held] = group;
  return refuse({
    code: "other in hand",
    tag: works[0]?.piece.tag ?? 0,
    tags: group.map(({ piece }) => piece.tag),
    step: held?.hand.step ?? "",
    since: held?.hand.since ?? 0,
  });
}

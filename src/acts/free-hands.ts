import type { NewEvent } from "../journal/event.ts";
import { handsOf } from "../shop/hands.ts";
import { type HandGroup, mayBeLeft, putDownFor } from "../shop/put-down.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import type { Work } from "./choose-work.ts";
import { contextAt, type DecideContext } from "./context.ts";
import { leaveAll } from "./leave.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";

/**
 * Frees a pair of hands for work that is to begin: what is in hand is left where it may be, the longest in hand first.
 * Pieces taken in one act are in one pair of hands. A coat half laid, or work forgotten since an earlier session,
 * must be hung first: the refusal asks about it.
 *
 * @returns the events that leave it; none where hands are free
 */
export function freeHands(
  works: readonly Work[],
  at: Instant,
  shop: Shop,
  context: DecideContext,
): readonly NewEvent[] | Refused {
  const pieces = works.map(({ piece }) => piece);
  const { leaving, stuck } = putDownFor(pieces, shop, contextAt(context, at));
  if (stuck) return refuseOther(works, stuck);
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
  at: Instant,
  shop: Shop,
  context: DecideContext,
): readonly NewEvent[] | Refused {
  const events: NewEvent[] = [];
  for (const { piece, step } of works) {
    const hand = handsOf(piece).running;
    if (!hand || hand.step === step.name) continue;
    const group = [{ piece, hand }];
    const left = mayBeLeft(group, contextAt(context, at)) ? leaveAll(at, group, shop) : null;
    if (!left || isRefused(left)) return refuseOther(works, group);
    events.push(...left);
  }
  return events;
}

function refuseOther(works: readonly Work[], group: HandGroup): Refused {
  const [held] = group;
  return refuse({
    code: "other in hand",
    tag: works[0]?.piece.tag ?? 0,
    tags: group.map(({ piece }) => piece.tag),
    step: held?.hand.step ?? "",
    since: held?.hand.since ?? 0,
  });
}

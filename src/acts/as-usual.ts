import { handOn } from "../shop/hands.ts";
import { usualHang, usualInHand } from "../shop/usual-hang.ts";
import type { Instant } from "../time/instant.ts";
import type { Work } from "./choose-work.ts";
import type { DecideContext } from "./context.ts";
import { type Refused, refuse } from "./refuse.ts";

/**
 * When forgotten work was hung if it took as long as usual. Work that lies half-done was not hung.
 *
 * Taken Tue 20:30, usually 8 min: 20:38.
 */
export function hangTime(work: Work, context: DecideContext): { readonly at: Instant } | Refused {
  const { piece, step } = work;
  const hand = handOn(piece, step.name);
  if (!hand || hand.takenAt === null) return refuse({ code: "not in hand", tag: piece.tag });
  const minutes = usualInHand(piece, step, hand, context.usualMinutes);
  return { at: usualHang(hand, minutes, context).usual };
}

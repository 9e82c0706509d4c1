import { stepsAfter } from "../process/order.ts";
import { handOn } from "../shop/hands.ts";
import { lastHang, workOf } from "../shop/passes.ts";
import type { Piece } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";

/**
 * When a step was last worked, if that still stands; null: it has not been begun, or a mend took it back. A step
 * begun keeps its place on the route.
 */
export function begunAt(piece: Piece, step: string): Instant | null {
  return handOn(piece, step)?.since ?? lastHang(workOf(piece, step))?.hungAt ?? null;
}

/** The first step after this one that has been begun, and when; null: none has. */
export function firstBegunAfter(piece: Piece, step: string): { step: string; at: Instant } | null {
  for (const later of stepsAfter(piece.route, step)) {
    const at = begunAt(piece, later);
    if (at !== null) return { step: later, at };
  }
  return null;
}

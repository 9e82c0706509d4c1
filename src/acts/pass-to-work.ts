import type { Step } from "../process/step.ts";
import { handOn } from "../shop/hands.ts";
import { coloursLeft, lastHang, nextPassNumber, workOf } from "../shop/passes.ts";
import type { Piece } from "../shop/shop.ts";

/** One pass of a step: its number, its colour, and whether the scheme did not have it. */
export interface PassToWork {
  readonly pass: number;
  readonly colour: string | null;
  readonly another: boolean;
}

/**
 * The pass of a step that is in hand, or the one to come. Without a colour said it is the scheme's next; a colour that
 * is not among those left is another pass.
 */
export function passToWork(piece: Piece, step: Step, said: string | null): PassToWork {
  const hand = handOn(piece, step.name);
  const work = workOf(piece, step.name);
  const pass = hand?.pass ?? nextPassNumber(work);
  if (step.passes === "one") return { pass, colour: null, another: false };
  const left = coloursLeft(piece, step).map(({ colour }) => colour);
  const wanted = said?.trim() ?? hand?.colour ?? left[0] ?? null;
  if (wanted === null) return { pass, colour: null, another: hand?.another ?? false };
  const planned = left.find((colour) => colour.toLowerCase() === wanted.toLowerCase());
  if (planned !== undefined) return { pass, colour: planned, another: false };
  // Without a scheme the step is one pass, of whatever colour the maker then says.
  const first = piece.scheme.length === 0 && lastHang(work) === null;
  return { pass, colour: wanted, another: !first };
}

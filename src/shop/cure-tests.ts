import type { CureTest } from "../journal/journal.ts";
import { coatOf } from "./laid-coat.ts";
import { liveHangs } from "./passes.ts";
import type { Piece } from "./shop.ts";
import { findStep } from "./steps.ts";
import { touchSpan } from "./touch-span.ts";

/** Every pass of a piece that was felt, with what that says of its coat in the air it hung in. */
export function cureTestsOf(piece: Piece): readonly CureTest[] {
  return [...piece.work].flatMap(([name, work]) => {
    const step = findStep(piece, name);
    const coat = step === undefined ? null : coatOf(piece, step);
    if (coat === null) return [];
    return liveHangs(work).flatMap((hang) => {
      const { least, most } = touchSpan(coat, hang, piece.air);
      if (least === 0 && most === Number.POSITIVE_INFINITY) return [];
      const at = hang.touches.at(-1)?.at ?? hang.hungAt;
      const finite = Number.isFinite(most) ? most : null;
      return [{ coat: coat.name, tag: piece.tag, step: name, pass: hang.pass, least, most: finite, at }];
    });
  });
}

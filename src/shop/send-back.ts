import { stepsAfter } from "../process/order.ts";
import { handsOf, setHands } from "./hands.ts";
import { workOf } from "./passes.ts";
import type { PieceDraft } from "./piece-draft.ts";
import type { SentBack } from "./shop.ts";

/**
 * Sends a piece back to an earlier step: that step and all that follow are to do again, whatever is in hand of them is
 * put down, and a finished piece is open again. What was hung stays on record as passes taken back.
 *
 * @param alsoAgain a step to do again wherever it stands in the order: the test whose answer sent it back
 */
export function sendBack(
  piece: PieceDraft,
  to: string,
  sentBack: SentBack,
  alsoAgain: string | null = null,
): void {
  const again = new Set([to, ...stepsAfter(piece.route, to)]);
  if (alsoAgain !== null) again.add(alsoAgain);
  for (const name of again) {
    const { hangs } = workOf(piece, name);
    const work = { hangs, voided: hangs.length, completed: false, prepared: null };
    piece.work.set(name, { ...work, sentBack: name === to ? sentBack : null });
  }
  const { running, lying } = handsOf(piece);
  setHands(piece, {
    running: running !== null && again.has(running.step) ? null : running,
    lying: lying.filter(({ step }) => !again.has(step)),
  });
  piece.end = null;
}

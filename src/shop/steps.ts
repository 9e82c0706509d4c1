import { stepNamed } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { handOn } from "./hands.ts";
import { isDone } from "./passes.ts";
import type { Piece } from "./shop.ts";

/** The step of that name on a piece's route. */
export function findStep(piece: Pick<Piece, "route">, name: string): Step | undefined {
  return stepNamed(piece.route, name);
}

/** The steps that a step waits for and that are not done, by name; one more pass in hand is not done either. */
export function stepsUndoneBefore(piece: Piece, step: Step): readonly string[] {
  const undone: string[] = [];
  for (const before of step.after.length === 0 ? [] : piece.route) {
    if (!step.after.includes(before.name)) continue;
    if (!isDone(piece, before) || handOn(piece, before.name) !== null) undone.push(before.name);
  }
  return undone;
}

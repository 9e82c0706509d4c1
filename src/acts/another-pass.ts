import type { Moment } from "../shop/moment.ts";
import type { Piece } from "../shop/shop.ts";
import { stepState } from "../shop/step-state.ts";
import { firstBegunAfter } from "./begun-step.ts";
import type { FoundStep } from "./find-step.ts";

/**
 * A painted step whose scheme is done may take one more colour, while no later step has been begun: the step then
 * stands as it would with that colour in its scheme (the flash-off of the pass before still counts).
 */
export function openForAnother(found: FoundStep, colour: string | null, at: Moment): FoundStep {
  const { piece, step, state } = found;
  const painted = colour !== null && step.passes === "scheme" && state.is === "done";
  if (!painted || firstBegunAfter(piece, step.name) !== null) return found;
  const work = piece.work.get(step.name);
  const longer: Piece = {
    ...piece,
    scheme: [...piece.scheme, { colour, minutes: null, flashOff: null }],
    work: work ? new Map(piece.work).set(step.name, { ...work, completed: false }) : piece.work,
  };
  return { ...found, state: stepState(longer, step.name, at) };
}

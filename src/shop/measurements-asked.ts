import type { Step } from "../process/step.ts";
import type { Piece } from "./shop.ts";

/** Something a step wants measured before it begins. */
export type Needed = Step["needs"][number];

/**
 * What the steps of pieces that are still to be worked want measured, each thing once, what is not known yet first.
 *
 * @param step only what this step wants; null: any
 */
export function measurementsAsked(pieces: readonly Piece[], step: string | null): readonly Needed[] {
  const asked = pieces.flatMap((piece) =>
    piece.route
      .filter(({ name }) => step === null || name === step)
      .flatMap(({ needs }) => needs.map((need) => ({ need, known: isKnown(piece, need) }))),
  );
  const inOrder = [...asked.filter(({ known }) => !known), ...asked.filter(({ known }) => known)];
  return [...new Map(inOrder.map(({ need }) => [`${need.what}\n${need.unit}`, need])).values()];
}

function isKnown(piece: Piece, { what, unit }: Needed): boolean {
  return piece.measured.get(what)?.unit === unit;
}

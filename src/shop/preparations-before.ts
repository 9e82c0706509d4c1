import type { Preparation } from "../process/coat.ts";
import { coatsBefore } from "../process/order.ts";
import { coatOf } from "./laid-coat.ts";
import type { Piece } from "./shop.ts";

/** What the late windows of the coats before a step may ask for first: usually the one scuff. */
export function preparationsBefore(
  piece: Pick<Piece, "route" | "coats">,
  step: string,
): readonly Preparation[] {
  return coatsBefore(piece.route, step).flatMap((before) =>
    (coatOf(piece, before)?.windows ?? []).flatMap(({ first }) => first ?? []),
  );
}

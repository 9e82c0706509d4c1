import type { Preparation } from "../process/coat.ts";
import { coatsBefore } from "../process/order.ts";
import type { Piece } from "../shop/shop.ts";

/** What the late windows of the coats before a step may ask for first: usually the one scuff. */
export function preparationsBefore(piece: Piece | undefined, step: string): readonly Preparation[] {
  if (piece === undefined) return [];
  return coatsBefore(piece.route, step).flatMap(({ coat }) =>
    coat === null ? [] : (piece.coats[coat]?.windows ?? []).flatMap(({ first }) => first ?? []),
  );
}

import type { Minutes } from "../time/instant.ts";
import { dispatch } from "./dispatch.ts";
import { type AddedPiece, makeProblem } from "./make-problem.ts";
import { outWanted } from "./need-new-piece.ts";
import type { ShopFacts } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";

/** The maker's aim as pieces to begin in the coming days, with the limit they are begun under. */
export interface AimedShop {
  /** The facts with that limit. */
  readonly facts: ShopFacts;
  readonly added: readonly AddedPiece[];
}

/**
 * Pieces of the process a new one would be of, as many as the aim leaves room for: those that are missing now, and one
 * for each that dispatch finishes before `until` minutes have passed, to be begun from then on. All come under the limit
 * on how many are out.
 */
export function aimPieces(facts: ShopFacts, until: Minutes): AimedShop {
  const { newPiece } = facts.context;
  const wanted = newPiece === null ? null : outWanted(facts);
  if (newPiece === null || wanted === null) return { facts, added: [] };
  const { finish } = dispatch(prepareDispatch(makeProblem(facts, false).problem));
  const leaves = facts.pieces
    .map((_, number) => finish[number] ?? Infinity)
    .filter((minute) => minute <= until)
    .toSorted((a, b) => a - b);
  // With more on their way than the aim asks for, the first to leave make no room.
  const room = wanted - facts.pieces.length;
  const releases = [...new Array<Minutes>(Math.max(0, room)).fill(0), ...leaves.slice(Math.max(0, -room))];
  const { definition } = newPiece;
  return {
    facts: { ...facts, aim: { from: "", finishedPerWeek: null, ...facts.aim, out: wanted } },
    added: releases.map((release) => ({ definition, due: null, release, underLimit: true })),
  };
}

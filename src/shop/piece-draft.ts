import type { Piece } from "./shop.ts";

/**
 * A piece while its events are folded into it. Only the fold ever has one, and it is its own: changing it in place
 * is ten times as fast as a copy for each event, and nobody else can see it half done.
 */
export type PieceDraft = { -readonly [K in Exclude<keyof Piece, "work" | "measured">]: Piece[K] } & {
  readonly work: Map<string, NonNullable<ReturnType<Piece["work"]["get"]>>>;
  readonly measured: Map<string, NonNullable<ReturnType<Piece["measured"]["get"]>>>;
};

/** Why an event does not fit a piece, in words: the piece is then as it was. Null: it fits, and is folded in. */
export type Misfit = string | null;

import type { LikelyMoment } from "../cure/likely-range.ts";
import { likelyHard } from "../shop/likely-hard.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { sayClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * When a coat is predicted to be dry-hard and how sure that is.
 *
 * @example sayLikely(hard, speech) // "dry-hard about 18:46, likely 17:05 to 20:30 (predicted)"
 */
export function sayLikely({ likely, from, to }: LikelyMoment, speech: Speech): string {
  const until = Number.isFinite(to) ? ` to ${sayClock(to, speech)}` : " or much later";
  return `dry-hard about ${sayClock(likely, speech)}, likely ${sayClock(from, speech)}${until} (predicted)`;
}

/** The same of the newest coat of a piece, for a line of its own; none where nothing is predicted. */
export function sayHowSure(piece: Piece, shop: Shop, speech: Speech): readonly string[] {
  const hard = likelyHard(piece, shop, speech.now);
  return hard === null ? [] : [`${piece.tag} ${hard.step}: ${sayLikely(hard, speech)}`];
}

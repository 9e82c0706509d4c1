import type { LikelyMoment } from "../cure/likely-range.ts";
import type { Tag } from "../journal/event.ts";
import { type LikelyHard, likelyHard, likelyIfHung } from "../shop/likely-hard.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { after } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { sayClock, sayWait } from "./say-time.ts";
import { sayReading } from "./say-units.ts";
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

/**
 * The same of the newest coat of a piece, for a line of its own, with what of its time did not count; none where nothing
 * is predicted.
 *
 * @example "1 first clear: dry-hard about 18:46, likely 16:55 to 20:35 (predicted); 10 h 01 below 10 °C did not count"
 */
export function sayHowSure(piece: Piece, shop: Shop, speech: Speech): readonly string[] {
  const hard = likelyHard(piece, shop, speech.now);
  if (hard === null) return [];
  return [`${piece.tag} ${hard.step}: ${sayLikely(hard, speech)}${sayNotCounted(hard, speech)}`];
}

/**
 * How sure it is when the coats just taken in hand will be dry-hard, hung after their usual minutes: a line a coat.
 *
 * @example "Hung 18:08, varnish is dry-hard about Thu 06:08, likely Thu 04:20 to 08:00 (predicted)."
 */
export function sayIfHung(
  taken: readonly { readonly tag: Tag; readonly step: string }[],
  shop: Shop,
  speech: Speech,
): readonly string[] {
  const lines = taken.flatMap(({ tag, step: name }) => {
    const piece = shop.pieces.get(tag);
    const step = piece?.route.find((one) => one.name === name);
    if (piece === undefined || step === undefined) return [];
    const hungAt = after(speech.now, step.handsOn.likely);
    const hard = likelyIfHung(piece, step, shop, hungAt);
    return hard === null
      ? []
      : [`Hung ${sayClock(hungAt, speech)}, ${step.coat} is ${sayLikely(hard, speech)}.`];
  });
  return [...new Set(lines)].map(plainText);
}

/** The line of every piece of which hours did not count: what the readings of a cold night have done. */
export function sayColdPast(shop: Shop, speech: Speech): readonly string[] {
  return [...shop.pieces.values()].flatMap((piece) => {
    const hard = likelyHard(piece, shop, speech.now);
    return hard === null || hard.notCounted === 0 ? [] : sayHowSure(piece, shop, speech);
  });
}

function sayNotCounted({ lowestCelsius, notCounted }: LikelyHard, speech: Speech): string {
  if (lowestCelsius === null || notCounted === 0) return "";
  return `; ${sayWait(notCounted)} below ${sayReading(lowestCelsius, speech)} did not count`;
}

import { coatTimes, reachedAt } from "../cure/coat-times.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Tag } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";
import { type LaidCoat, newestCoat } from "./laid-coat.ts";
import type { Piece, Shop } from "./shop.ts";

const HOUR = 3_600_000;
/** A night and a day ahead: further on nobody would carry a piece to the warm box tonight. */
const LOOKS_AHEAD = 36;

/** A coat that will hang in air too cold for it to cure before it is dry-hard. */
export interface ColdAhead {
  readonly tag: Tag;
  readonly coat: string;
  readonly lowestCelsius: number;
  /** The coldest hour before it is dry-hard, within a night and a day. */
  readonly coldest: { readonly at: Instant; readonly celsius: number };
  /** When it will be dry-hard; null: not as far as can be seen. */
  readonly hard: Instant | null;
  /** A place where it would be so sooner, moved there now; null: none is known. */
  readonly better: { readonly place: string; readonly celsius: number; readonly hard: Instant } | null;
}

/** Every coat that hangs, is not dry-hard, and has air below its lowest temperature ahead: by tag. */
export function coldAhead(shop: Shop, now: Instant): readonly ColdAhead[] {
  const coldest = new Map<string, ColdAhead["coldest"] | null>();
  return [...shop.pieces.values()].flatMap((piece) => {
    const { place } = piece;
    if (piece.end !== null || place === null) return [];
    if (!coldest.has(place)) coldest.set(place, coldestHour(shop, place, now, now + LOOKS_AHEAD * HOUR));
    // Nearly always it is warm enough, and then nobody need know when each coat will be hard.
    const celsius = coldest.get(place)?.celsius ?? Number.POSITIVE_INFINITY;
    if (celsius >= warmestLimit(piece)) return [];
    const laid = newestCoat(piece);
    const cold = laid === null ? null : coldOf(piece, laid, shop, now);
    return cold === null ? [] : [cold];
  });
}

/** The highest of the lowest temperatures of its coats. */
function warmestLimit({ coats }: Piece): number {
  return Math.max(
    ...Object.values(coats).map(({ lowestCelsius }) => lowestCelsius ?? Number.NEGATIVE_INFINITY),
  );
}

function coldOf(piece: Piece, laid: LaidCoat, shop: Shop, now: Instant): ColdAhead | null {
  const { lowestCelsius } = laid.coat;
  const hard = hardOf(laid);
  if (lowestCelsius === null || hard === null || hard <= now) return null;
  const coldest = coldestHour(shop, piece.place ?? NO_PLACE, now, Math.min(hard, now + LOOKS_AHEAD * HOUR));
  if (coldest === null || coldest.celsius >= lowestCelsius) return null;
  return {
    tag: piece.tag,
    coat: laid.name,
    lowestCelsius,
    coldest,
    hard: Number.isFinite(hard) ? hard : null,
    better: betterPlace(piece, laid, shop, now, hard),
  };
}

function hardOf({ times }: LaidCoat): Instant | null {
  return reachedAt(times.reaches, "dry-hard");
}

function coldestHour(shop: Shop, place: string, from: Instant, to: Instant): ColdAhead["coldest"] | null {
  let coldest: ColdAhead["coldest"] | null = null;
  for (let at = from; at <= to; at += HOUR) {
    const air = shop.air.at(place, at);
    if (air !== null && air.celsius < (coldest?.celsius ?? Number.POSITIVE_INFINITY)) {
      coldest = { at, celsius: air.celsius };
    }
  }
  return coldest;
}

/** Of the places whose air is known, the one where it would be dry-hard first, an hour sooner at least. */
function betterPlace(piece: Piece, laid: LaidCoat, shop: Shop, now: Instant, hard: Instant) {
  let best: ColdAhead["better"] = null;
  for (const place of shop.air.lines.keys()) {
    if (place === NO_PLACE || place === piece.place) continue;
    const air = shop.air.of([...piece.hungAt, { at: now, place }]);
    const times = coatTimes(laid.coat, laid.hang.hungAt, laid.hang.flashOff, { ...laid.drying, air });
    const there = reachedAt(times.reaches, "dry-hard") ?? hard;
    const celsius = shop.air.at(place, now)?.celsius;
    if (celsius !== undefined && there < Math.min(hard, best?.hard ?? Infinity) - HOUR) {
      best = { place, celsius, hard: there };
    }
  }
  return best;
}

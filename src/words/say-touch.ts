import { isFault } from "../cure/touch-fit.ts";
import type { CureFactor } from "../learned/cure-tests.ts";
import { type LaidCoat, newestCoat } from "../shop/laid-coat.ts";
import { hardRange } from "../shop/likely-hard.ts";
import type { Piece } from "../shop/shop.ts";
import { touchSpan } from "../shop/touch-span.ts";
import { sayLikely } from "./say-how-sure.ts";
import { capital, sayCount } from "./say-list.ts";
import type { Speech } from "./speech.ts";

/** Nearer to its sheet than this is not worth a word. */
const WORTH_TELLING = 0.05;

/**
 * What a touch test says of the coat it felt: that waiting will not help, or by how much it is slower than its sheet and
 * what that moves. Nothing where it only agrees.
 *
 * @example "14: varnish takes 1.5x its sheet here, dry-hard about 12:00, likely 12:00 to 14:45 (predicted)"
 */
export function sayTouched(piece: Piece, speech: Speech): readonly string[] {
  const laid = newestCoat(piece);
  if (laid === null || laid.hang.touches.at(-1)?.found !== "tacky") return [];
  const span = touchSpan(laid.coat, laid.hang, piece.air);
  if (isFault(span)) return sayFault(piece, laid, span.least);
  if (Math.abs(laid.drying.factor - 1) < WORTH_TELLING) return [];
  const hard = hardRange(laid);
  const when = hard === null ? "" : `, ${sayLikely(hard, speech)}`;
  return [`${piece.tag}: ${laid.name} takes ${sayTimes(laid.drying.factor)} its sheet here${when}`];
}

/** Causes as they are usually named: common practice, no source. */
function sayFault(piece: Piece, laid: LaidCoat, times: number): readonly string[] {
  const causes =
    laid.coat.curesBy === "resin"
      ? "a wrong ratio, poor mixing, a cold cup or a coat too thick"
      : "a coat too thick, one below it not dry, damp or cold air, a can past its day, or wax and grease";
  return [
    `${piece.tag}: ${laid.name} is tacky at ${sayTimes(times)} its time: more waiting will not help`,
    `  the usual causes: ${causes}; mend it from ${laid.step} once you know`,
  ];
}

/**
 * How a coat keeps to its sheet, by all that was felt of it; nothing while that is as the sheet says.
 *
 * @example sayFactor("sealer", { factor: 1.3, tests: 9 }) // "Your sealer runs 1.3x its sheet, from 9 tests"
 */
export function sayFactor(coat: string, { factor, tests }: CureFactor): string | null {
  if (Math.abs(factor - 1) < WORTH_TELLING) return null;
  return capital(`your ${coat} runs ${sayTimes(factor)} its sheet, from ${sayCount(tests, "test")}`);
}

const sayTimes = (factor: number): string => `${Math.round(factor * 10) / 10}x`;

import { reachedAt } from "../cure/coat-times.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import { type LikelyMoment, likelyRange } from "../cure/likely-range.ts";
import { stagesBySheet } from "../cure/stage.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { type LaidCoat, newestCoat } from "./laid-coat.ts";
import type { Piece, Shop } from "./shop.ts";
import { stageMoment } from "./stage-moment.ts";
import { touchSpan } from "./touch-span.ts";

/** When the newest coat of a piece, and which step laid it, is predicted to be dry-hard. */
export interface LikelyHard extends LikelyMoment {
  readonly step: string;
  readonly lowestCelsius: number | null;
  /** Minutes since it was laid that did not count, for it hung in air below that. */
  readonly notCounted: Minutes;
}

/**
 * Null where nothing is predicted: the coat is dry-hard, only a touch can say, it cures by the clock or a lamp, or it goes
 * by its sheet, neither the air nor its can being known.
 */
export function likelyHard(piece: Piece, shop: Pick<Shop, "air">, now: Instant): LikelyHard | null {
  const laid = newestCoat(piece);
  if (laid === null || piece.end !== null) return null;
  const { coat, drying } = laid;
  if (coat.curesBy === "clock" || coat.curesBy === "light") return null;
  if (shop.air.at(piece.place ?? NO_PLACE, now) === null && drying.factor === 1) return null;
  const hard = stageMoment(laid, "dry-hard", now);
  if (typeof hard !== "number" || hard <= now) return null;
  const range = hardRange(laid);
  if (range === null) return null;
  return { ...range, step: laid.step, lowestCelsius: coat.lowestCelsius, notCounted: notCounted(laid, now) };
}

/** Minutes by the clock that a coat hung in air below its lowest temperature. */
function notCounted({ coat, hang, drying }: LaidCoat, now: Instant): Minutes {
  // What cures by the clock alone, but not in the cold, counts every minute that is warm enough.
  const counted = drying.air.spent({ ...coat, curesBy: "clock", activationEnergy: null }, hang.hungAt, now);
  return Math.max(0, Math.round((now - hang.hungAt) / MINUTE - counted));
}

/** When a laid coat is dry-hard in its air, whatever a touch must still say; null: never, or its sheet names no stage. */
export function hardRange({ coat, hang, drying }: LaidCoat): LikelyMoment | null {
  const bySheet = reachedAt(stagesBySheet(coat), "dry-hard");
  if (bySheet === null) return null;
  const span = touchSpan(coat, hang, drying.air);
  return likelyRange(coat, hang.hungAt, bySheet / MINUTE, drying, span);
}

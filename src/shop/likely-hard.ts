import { reachedAt } from "../cure/coat-times.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import { type LikelyMoment, likelyRange } from "../cure/likely-range.ts";
import { stagesBySheet } from "../cure/stage.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { type LaidCoat, newestCoat } from "./laid-coat.ts";
import type { Piece, Shop } from "./shop.ts";
import { stageMoment } from "./stage-moment.ts";
import { touchSpan } from "./touch-span.ts";

/** When the newest coat of a piece, and which step laid it, is predicted to be dry-hard. */
export interface LikelyHard extends LikelyMoment {
  readonly step: string;
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
  return range === null ? null : { ...range, step: laid.step };
}

/** When a laid coat is dry-hard in its air, whatever a touch must still say; null: never, or its sheet names no stage. */
export function hardRange({ coat, hang, drying }: LaidCoat): LikelyMoment | null {
  const bySheet = reachedAt(stagesBySheet(coat), "dry-hard");
  if (bySheet === null) return null;
  const span = touchSpan(coat, hang, drying.air);
  return likelyRange(coat, hang.hungAt, bySheet / MINUTE, drying, span);
}

import { reachedAt } from "../cure/coat-times.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import { type LikelyMoment, likelyRange } from "../cure/likely-range.ts";
import { stagesBySheet } from "../cure/stage.ts";
import type { Coat } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { coatOf, type LaidCoat, newestCoat } from "./laid-coat.ts";
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
  if (!isPredicted(coat, piece.place ?? NO_PLACE, shop, now, drying.factor)) return null;
  const hard = stageMoment(laid, "dry-hard", now);
  if (typeof hard !== "number" || hard <= now) return null;
  const range = hardRange(laid);
  if (range === null) return null;
  return { ...range, step: laid.step, lowestCelsius: coat.lowestCelsius, notCounted: notCounted(laid, now) };
}

/** When the coat that a step lays would be dry-hard, hung at a moment where the step says; null: likewise. */
export function likelyIfHung(
  piece: Piece,
  step: Step,
  shop: Pick<Shop, "air">,
  hungAt: Instant,
): LikelyMoment | null {
  const coat = coatOf(piece, step);
  const place = step.place ?? piece.place ?? NO_PLACE;
  const factor = coat === null || !piece.pace.touchesCount ? 1 : (piece.pace.factors.get(coat.name) ?? 1);
  if (coat === null || !isPredicted(coat, place, shop, hungAt, factor) || coat.feelFirst) return null;
  const bySheet = reachedAt(stagesBySheet(coat), "dry-hard");
  if (bySheet === null) return null;
  const air = shop.air.of([{ at: hungAt, place }]);
  return likelyRange(coat, hungAt, bySheet / MINUTE, { air, factor }, UNFELT);
}

const UNFELT = { least: 0, most: Number.POSITIVE_INFINITY };

/** Whether more is known than its sheet: its air, or its can; of what cures by the clock or a lamp there is no more. */
function isPredicted(
  { curesBy }: Coat,
  place: string,
  { air }: Pick<Shop, "air">,
  now: Instant,
  factor: number,
): boolean {
  if (curesBy === "clock" || curesBy === "light") return false;
  return air.at(place, now) !== null || factor !== 1;
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

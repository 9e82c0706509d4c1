import type { Coat } from "../process/coat.ts";
import type { Air, Mix } from "../process/quantity-form.ts";
import type { Minutes } from "../time/instant.ts";
import { cureRate } from "./cure-rate.ts";

/** How much of each to measure out, in ml by volume or g by weight. */
export interface Measured {
  readonly resin: number;
  readonly hardener: number;
}

/**
 * Resin and hardener for so many pieces; null where the file does not say how much one takes.
 *
 * @example mixFor({ resin: 2, hardener: 1, by: "volume", perPiece: 1.5 }, 4) // 4 and 2 ml
 */
export function mixFor({ resin, hardener, perPiece }: Mix, pieces: number): Measured | null {
  if (perPiece === null) return null;
  const whole = perPiece * pieces;
  const parts = resin + hardener;
  return { resin: (whole * resin) / parts, hardener: (whole * hardener) / parts };
}

/**
 * How long a cup keeps in today's air, by the law its coat cures by. A full cup heats itself and keeps shorter yet, one
 * spread thin keeps longer: a figure to work by, predicted.
 *
 * @param minutes as the file says, in the air of the sheet
 */
export function potLife(
  coat: Pick<Coat, "curesBy" | "sheetAir" | "activationEnergy">,
  minutes: Minutes,
  air: Air,
): Minutes {
  // The lowest temperature is for the film: a cold cup keeps, however little its coat would cure.
  return Math.floor(minutes / cureRate({ ...coat, lowestCelsius: null }, air));
}

/** How many pieces one cup can coat: as many as it serves, and as can be laid while it keeps. */
export function piecesOfCup(keeps: Minutes, serves: number, handsOn: Minutes): number {
  return Math.max(0, Math.min(serves, Math.floor(keeps / handsOn)));
}

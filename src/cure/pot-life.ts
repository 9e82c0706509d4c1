import type { Coat } from "../process/coat.ts";
import type { Air, Mix } from "../process/quantity-form.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { type Curing, cureRate } from "./cure-rate.ts";
import { NO_PLACE, type ShopAir } from "./hanging-air.ts";

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

/** What a cup's keeping depends on. */
type Cup = Pick<Coat, "curesBy" | "sheetAir" | "activationEnergy">;

/**
 * How long a cup keeps in today's air: a resin by the law it cures by; what dries by the air keeps in its cup as the file
 * says. A full cup heats itself and keeps shorter yet, one spread thin keeps longer: a figure to work by, predicted.
 *
 * @param minutes as the file says, in the air of the sheet
 */
export function potLife(cup: Cup, minutes: Minutes, air: Air): Minutes {
  return cup.curesBy === "resin" ? Math.floor(minutes / cureRate(inCup(cup), air)) : minutes;
}

/**
 * Until when a cup keeps in a shop's air, as it was and is expected, to the minute before; a week at the most.
 *
 * @param minutes as the file says, in the air of the sheet
 */
export function cupEnd(cup: Cup, minutes: Minutes, mixed: Instant, air: ShopAir): Instant {
  if (cup.curesBy !== "resin") return after(mixed, minutes);
  const here = air.of([{ at: mixed, place: NO_PLACE }]);
  const end = Math.min(here.reach(inCup(cup), mixed, minutes), after(mixed, LONGEST_CUP));
  return here.spent(inCup(cup), mixed, end) > minutes + 1e-6 ? after(end, -1) : end;
}

const LONGEST_CUP: Minutes = 7 * 24 * 60;

/** The lowest temperature is for the film: a cold cup keeps, however little its coat would cure. */
const inCup = (cup: Cup): Curing => ({ ...cup, lowestCelsius: null });

/** How many pieces one cup can coat: as many as it serves, and as can be laid while it keeps. */
export function piecesOfCup(keeps: Minutes, serves: number, handsOn: Minutes): number {
  return Math.max(0, Math.min(serves, Math.floor(keeps / handsOn)));
}

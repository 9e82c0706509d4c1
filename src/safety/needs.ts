import { NO_PLACE, type ShopAir } from "../cure/hanging-air.ts";
import { equilibriumMoisture } from "../cure/wood-moisture.ts";
import type { Step } from "../process/step.ts";
import type { Piece } from "../shop/shop.ts";

type Need = Step["needs"][number];

/** How a piece stands to a measurement that a step asks for. */
export type NeedState =
  | { readonly is: "met" }
  | { readonly is: "too high"; readonly value: number }
  /** Not known; `guidance`: what wood comes to in this air, in percent, where that is known. */
  | { readonly is: "not known"; readonly guidance: number | null };

const MOISTURE = "wood moisture";
/** A day, less what a bench session may begin earlier. */
const DAY_APART = 20 * 3_600_000;
/** Weighings that differ by less are equal: half a percent is beyond a kitchen scale for a lure. Our own, no source. */
const EQUAL = 0.005;

/**
 * Whether a piece is measured as a step asks. Wood that weighs the same a day later has come to rest with the air: its
 * moisture then is that of the air, by the Wood Handbook's equation, where the air is known.
 */
export function needState({ what, atMost, unit }: Need, piece: Piece, air: ShopAir): NeedState {
  const measured = piece.measured.get(what);
  if (measured !== undefined && measured.unit === unit) {
    return measured.value <= atMost ? { is: "met" } : { is: "too high", value: measured.value };
  }
  const guidance = what === MOISTURE ? restingMoisture(air) : null;
  if (what !== MOISTURE || !isAtRest(piece)) return { is: "not known", guidance };
  if (guidance === null || guidance <= atMost) return { is: "met" };
  return { is: "too high", value: Math.round(guidance * 10) / 10 };
}

/** Two weighings, a day or more apart, that came out equal, the last of all among them. */
function isAtRest({ weighed }: Piece): boolean {
  const last = weighed.at(-1);
  if (last === undefined) return false;
  return weighed.some(
    ({ grams, at }) => last.at - at >= DAY_APART && Math.abs(grams - last.grams) <= EQUAL * last.grams,
  );
}

/** What wood comes to in the shop's mean air; null: the air is not known. */
function restingMoisture(air: ShopAir): number | null {
  const line = air.lines.get(NO_PLACE);
  if (line === undefined) return null;
  const { byHour } = line.ahead;
  const mean = (of: (hour: (typeof byHour)[number]) => number) =>
    byHour.reduce((sum, hour) => sum + of(hour), 0) / byHour.length;
  return equilibriumMoisture({
    celsius: mean(({ celsius }) => celsius),
    humidityPercent: mean(({ humidityPercent }) => humidityPercent),
  });
}

import type { Coat } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Minutes } from "../time/instant.ts";
import { cureRate } from "./cure-rate.ts";

/**
 * A coat with its times as they are in air that stays as it is; null: it does not cure in it.
 *
 * @example a resin dry-hard after 24 h at 20 °C, by 60 kJ/mol, is one dry-hard after 15 h 53 at 25 °C
 */
export function coatInAir(coat: Coat, air: Air): Coat | null {
  const rate = cureRate(coat, air);
  if (rate === 0) return null;
  const there = (minutes: Minutes): Minutes => Math.ceil(minutes / rate);
  return {
    ...coat,
    flashOff: there(coat.flashOff),
    stages: Object.fromEntries(
      Object.entries(coat.stages).map(([stage, minutes]) => [stage, there(minutes)]),
    ),
    windows: coat.windows.map(({ opens, shuts, first }) => ({
      opens: opens === "flash-off" ? opens : there(opens),
      shuts: shuts === null ? null : there(shuts),
      first,
    })),
  };
}

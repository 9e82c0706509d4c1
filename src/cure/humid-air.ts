import type { Air } from "../process/quantity-form.ts";
import { toKelvin } from "./kelvin.ts";

/** Magnus coefficients over water of Alduchov and Eskridge, J. Appl. Meteorol. 35 (1996) 601-609; the first in hPa. */
const A = 6.1094;
const B = 17.625;
const C = 243.04;

/** Molar mass of water over the gas constant, g K/J. */
const WATER_OVER_GAS = 18.015_28 / 8.314_462_618;

/**
 * Pressure of saturated water vapour over water, in hPa, by the Magnus formula.
 *
 * @example saturationPressure(20) // 23.33
 */
export function saturationPressure(celsius: number): number {
  return A * Math.exp((B * celsius) / (C + celsius));
}

/** Pressure of the water vapour that is in the air, in hPa. */
export function vapourPressure({ celsius, humidityPercent }: Air): number {
  return (saturationPressure(celsius) * humidityPercent) / 100;
}

/** How much more vapour the air could take up, in hPa: what draws the water out of a coat. */
export function vapourDeficit(air: Air): number {
  return saturationPressure(air.celsius) - vapourPressure(air);
}

/** Grams of water in a cubic metre of air: what a moisture-cured coat cures by. */
export function waterInAir(air: Air): number {
  // hPa to Pa, by the law of ideal gases.
  return (vapourPressure(air) * 100 * WATER_OVER_GAS) / toKelvin(air.celsius);
}

/**
 * Temperature in °C at which water begins to settle out of the air, over water (a frost point lies about 1 °C higher
 * below 0 °C). Air without any moisture has none: -Infinity.
 *
 * @example dewPoint({ celsius: 20, humidityPercent: 50 }) // 9.26
 */
export function dewPoint({ celsius, humidityPercent }: Air): number {
  const gamma = Math.log(humidityPercent / 100) + (B * celsius) / (C + celsius);
  return humidityPercent <= 0 ? Number.NEGATIVE_INFINITY : (C * gamma) / (B - gamma);
}

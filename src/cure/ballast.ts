import type { Step } from "../process/step.ts";

/**
 * Lead in grams per cubic centimetre, liquid at its melting point and solid at 20 °C: matmake.com's table of lead, which
 * cites the CRC Handbook of Chemistry and Physics, 97th edition.
 */
const LIQUID_LEAD = 10.66;
const SOLID_LEAD = 11.34;

/**
 * Grams of lead that fill the holes of one piece: `least` when each is poured level and sinks as it sets, `most` when
 * it is topped up.
 *
 * @example ballastGrams({ holes: 2, acrossMillimetres: 8, deepMillimetres: 14 }) // 15.0 to 16.0: 2 x pi x 4² x 14 mm³ = 1.407 cm³
 */
export function ballastGrams({ holes, acrossMillimetres, deepMillimetres }: NonNullable<Step["ballast"]>): {
  readonly least: number;
  readonly most: number;
} {
  const cubicCentimetres = (holes * Math.PI * (acrossMillimetres / 2) ** 2 * deepMillimetres) / 1_000;
  return { least: cubicCentimetres * LIQUID_LEAD, most: cubicCentimetres * SOLID_LEAD };
}

import type { Ballast } from "../process/step.ts";
import { LEAD } from "./lead.ts";

/**
 * Grams in a cubic centimetre. Tungsten at 20 °C: matmake.com's table of tungsten, which cites the CRC Handbook of
 * Chemistry and Physics, 97th edition. Tin, white, 18 to 161 °C: MatWeb's data sheet "Tin, Sn". It shrinks too, but is not
 * said by how much. Steel: the density that section masses are reckoned by (Steel for Life, Blue Book, notes on dimensions,
 * 2.1 Masses). Tungsten and steel come as slugs.
 */
const DENSITIES: Readonly<
  Record<NonNullable<Ballast["metal"]>, { readonly poured: number; readonly solid: number }>
> = {
  lead: { poured: LEAD.liquidDensity, solid: LEAD.solidDensity },
  tin: { poured: 7.29, solid: 7.29 },
  tungsten: { poured: 19.3, solid: 19.3 },
  steel: { poured: 7.85, solid: 7.85 },
};

/** The ballast of one piece: what its holes hold, or how deep they must be for the weight wanted. */
export interface BallastSize {
  /** In grams, poured level; it sinks as it sets. */
  readonly least: number;
  /** In grams, topped up, or as a slug that fills the hole. */
  readonly most: number;
  readonly deepMillimetres: number;
}

/**
 * Works out the ballast of one piece from its holes, or its holes from the weight wanted when topped up.
 *
 * @example ballastSize({ holes: 2, acrossMillimetres: 8, deepMillimetres: 14, ... }) // 15.0 to 16.0 g: 2 x pi x 4² x 14 mm³ = 1.407 cm³ of lead
 */
export function ballastSize({
  holes,
  acrossMillimetres,
  deepMillimetres,
  grams,
  metal = "lead",
}: Ballast): BallastSize {
  const { poured, solid } = DENSITIES[metal];
  const perMillimetre = (holes * Math.PI * (acrossMillimetres / 2) ** 2) / 1_000;
  const deep = deepMillimetres ?? (grams ?? 0) / solid / perMillimetre;
  const cubicCentimetres = perMillimetre * deep;
  return { least: cubicCentimetres * poured, most: cubicCentimetres * solid, deepMillimetres: deep };
}

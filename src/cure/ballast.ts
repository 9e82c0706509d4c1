import type { Ballast } from "../process/step.ts";

/**
 * Grams in a cubic centimetre. Lead, liquid at its melting point and solid at 20 °C: matmake.com's table of lead, which
 * cites the CRC Handbook of Chemistry and Physics, 97th edition. Tungsten at 20 °C: its table of tungsten, which cites the
 * same. Tin, white, 18 to 161 °C: MatWeb's data sheet "Tin, Sn". It shrinks too, but is not said by how much. Steel: the
 * density that section masses are reckoned by (Steel for Life, Blue Book, notes on dimensions, 2.1 Masses). Tungsten and
 * steel come as slugs.
 */
const DENSITIES: Readonly<
  Record<NonNullable<Ballast["metal"]>, { readonly poured: number; readonly solid: number }>
> = {
  lead: { poured: 10.66, solid: 11.34 },
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

import type { Coat } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import { vapourDeficit, waterInAir } from "./humid-air.ts";
import { toKelvin } from "./kelvin.ts";

/** Gas constant in kJ/(mol K). */
const GAS = 0.008_314_462_618;

/**
 * Activation energy of a resin whose sheet gives none, in kJ/mol: the middle of 55 to 70, the range published for
 * epoxies with amines (Thermochim. Acta 447 (2006) 167-177; B. Jawad, DSC study, University of Technology, Iraq).
 */
const RESIN_ENERGY = 60;
export const RESIN_ENERGY_RANGE = [55, 70] as const;

/**
 * The same for a coat that dries as its solvent leaves: about 1.5 times in 10 °C. An approximation of our own, mild
 * on purpose: what is known of resins does not hold for it. Vapour pressures of paint solvents rise by more, n-heptane's
 * by 36 kJ/mol and butyl acetate's by 43 (enthalpies of vaporization, NIST Chemistry WebBook, averages): 1.6 to 1.8 times
 * in 10 °C. But the film holds the last of a solvent back, and oils dry by the air.
 */
const SOLVENT_ENERGY = 30;
/** From ours to that of plain evaporation, of butyl acetate. */
export const SOLVENT_ENERGY_RANGE = [SOLVENT_ENERGY, 43] as const;

/** Drier or damper air than the sheet's speeds a coat up no further than this: the film itself is then in the way. Our own, no source. */
const FASTEST_BY_AIR = 2;

/** What the cure of a coat depends on. */
export type Curing = Pick<Coat, "curesBy" | "sheetAir" | "lowestCelsius" | "activationEnergy">;

/**
 * How many minutes by the sheet a coat goes on in one minute of this air: 1 in the air of the sheet, 0 below the lowest
 * temperature it names.
 *
 * - resin: Arrhenius, exp(-E/R (1/T - 1/T sheet)); its sum over time is the equivalent age (form of ASTM C1074)
 * - solvent: the same with a low energy, an approximation
 * - water: by how much more vapour the air could take up
 * - moisture: by the water in the air
 * - light, clock: as time passes; whether the lamp is on is for its place to say
 */
export function cureRate(curing: Curing, air: Air): number {
  return cureLaw(curing).rateIn(air);
}

/** How fast something comes on in air: nothing below its lowest temperature. */
export interface CureLaw {
  readonly rateIn: (air: Air) => number;
  readonly lowest: number;
}

/** The law of a coat that will be asked about much air: what hangs on its sheet alone is reckoned once. */
export function cureLaw(curing: Curing): CureLaw {
  const lowest = curing.lowestCelsius ?? Number.NEGATIVE_INFINITY;
  const rate = aboveLowest(curing);
  return { rateIn: (air) => (air.celsius < lowest ? 0 : rate(air)), lowest };
}

function aboveLowest({ curesBy, sheetAir, activationEnergy }: Curing): (air: Air) => number {
  switch (curesBy) {
    case "resin":
    case "solvent": {
      const energy = activationEnergy ?? (curesBy === "resin" ? RESIN_ENERGY : SOLVENT_ENERGY);
      return arrheniusFrom(energy, sheetAir.celsius);
    }
    case "water": {
      const onSheet = vapourDeficit(sheetAir);
      return (air) => byAir(vapourDeficit(air), onSheet);
    }
    case "moisture": {
      const onSheet = waterInAir(sheetAir);
      return (air) => byAir(waterInAir(air), onSheet);
    }
    case "light":
    case "clock":
      return () => 1;
  }
}

/**
 * How many times faster a reaction runs at a temperature than at another, by its activation energy in kJ/mol.
 *
 * @example arrhenius(50, 30, 20) // 1.967
 */
export function arrhenius(energy: number, celsius: number, referenceCelsius: number): number {
  return arrheniusFrom(energy, referenceCelsius)({ celsius });
}

function arrheniusFrom(energy: number, referenceCelsius: number): (air: Pick<Air, "celsius">) => number {
  const [steepness, reference] = [-energy / GAS, 1 / toKelvin(referenceCelsius)];
  return ({ celsius }) => Math.exp(steepness * (1 / toKelvin(celsius) - reference));
}

/** A sheet that states air in which its coat could not cure at all leaves nothing to go by: as time passes. */
function byAir(here: number, onSheet: number): number {
  return onSheet <= 0 ? 1 : Math.min(FASTEST_BY_AIR, Math.max(0, here / onSheet));
}

import { GRAMS_PER_OUNCE, MILLIMETRES_PER_INCH } from "./units.ts";

/** Air as a coat's sheet names it. */
export interface Air {
  readonly celsius: number;
  readonly humidityPercent: number;
}

/** The temperatures a bench, a warm box or a freezing garage can have; beyond them is a slip of the key. */
export const COLDEST = -40;
export const HOTTEST = 120;

const MOST_MEASURED = 1_000_000;

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const TEMPERATURE = new RegExp(String.raw`^(${NUMBER})\s*°?\s*([CF])$`, "i");
const AIR = new RegExp(String.raw`^(${NUMBER}\s*°?\s*[CF]),?\s+(\d+(?:\.\d+)?)\s*%$`, "i");
const AT_MOST = /^at most\s+(\d+(?:\.\d+)?)\s*([^\d\s.,-][^\d]*)$/;
const LENGTH = /^(?:(\d+(?:\.\d+)?)|(?:(\d+)\s+)?(\d+)\/(\d+))\s*(mm|cm|in|inch|")$/;
const WEIGHT = /^(\d+(?:\.\d+)?)\s*(g|oz)$/;
const MIX =
  /^(\d+(?:\.\d+)?)\s*(?::|to)\s*(\d+(?:\.\d+)?)\s+by\s+(volume|weight)(?:,\s*(\d+(?:\.\d+)?)\s*(ml|g)\s+a\s+piece)?$/;
const ENERGY = /^(\d+(?:\.\d+)?)\s*kJ\s*\/\s*mol$/i;
/** Bonds of carbon break at some 350 kJ/mol: no coat cures by more than the half of it. */
const HIGHEST_ENERGY = 200;
const MILLIMETRES_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10 };

/** Celsius, to the hundredth, of `21 °C`, `70 °F`, `70 F`. Null: not so written, or no air of this earth. */
export function readCelsius(text: string): number | null {
  const [, figure, scale = ""] = TEMPERATURE.exec(text.trim()) ?? [];
  if (figure === undefined) return null;
  const celsius = scale.toUpperCase() === "C" ? Number(figure) : ((Number(figure) - 32) * 5) / 9;
  return celsius >= COLDEST && celsius <= HOTTEST ? roundTo(celsius, 100) : null;
}

/** Percent, to the hundredth, of `85 %`. Null: not so written, or no humidity. */
export function readHumidity(text: string): number | null {
  const percent = roundTo(Number(/^(\d+(?:\.\d+)?)\s*%$/.exec(text.trim())?.[1]), 100);
  return percent > 0 && percent <= 100 ? percent : null;
}

/** Temperature and relative humidity of `21 °C 50 %` or `70 °F 50 %`. Null: not so written. */
export function readAir(text: string): Air | null {
  const [, temperature = "", humidity] = AIR.exec(text.trim()) ?? [];
  const celsius = readCelsius(temperature);
  const humidityPercent = roundTo(Number(humidity), 100);
  return celsius !== null && humidityPercent <= 100 ? { celsius, humidityPercent } : null;
}

/**
 * Millimetres, to the ten-thousandth, of `8 mm`, `0.8 cm`, `0.3 in`, `5/16 in`, `1 1/8 in`. Null: not so written, or
 * nothing.
 * `readMillimetres("5/16 in") === 7.9375`
 */
export function readMillimetres(text: string): number | null {
  const [, figure, whole = "0", over, under, unit = ""] = LENGTH.exec(text.trim()) ?? [];
  const count = figure === undefined ? Number(whole) + Number(over) / Number(under) : Number(figure);
  const millimetres = roundTo(count * (MILLIMETRES_PER[unit] ?? MILLIMETRES_PER_INCH), 10_000);
  return millimetres > 0 && millimetres <= 1_000 ? millimetres : null;
}

/** Kilojoules per mole, to the tenth, of `60 kJ/mol`. Null: not so written, or none that a coat cures by. */
export function readActivationEnergy(text: string): number | null {
  const energy = roundTo(Number(ENERGY.exec(text.trim())?.[1]), 10);
  return energy >= 1 && energy <= HIGHEST_ENERGY ? energy : null;
}

/** Grams, to the thousandth, of `12 g` or `0.5 oz`. Null: not so written, or nothing. */
export function readGrams(text: string): number | null {
  const [, figure, unit] = WEIGHT.exec(text.trim()) ?? [];
  const grams = roundTo(Number(figure) * (unit === "oz" ? GRAMS_PER_OUNCE : 1), 1_000);
  return grams > 0 && grams <= MOST_MEASURED ? grams : null;
}

/** What a cup is mixed of: `2 to 1 by volume, 1.5 ml a piece`. Null: not so written, or nothing of something. */
export function readMix(text: string): Mix | null {
  const [, resin, hardener, by, perPiece, unit] = MIX.exec(text.trim()) ?? [];
  if (by !== "volume" && by !== "weight") return null;
  const mix = {
    resin: Number(resin),
    hardener: Number(hardener),
    by,
    perPiece: perPiece === undefined ? null : Number(perPiece),
  } as const;
  const fits = mix.resin > 0 && mix.hardener > 0 && (mix.perPiece === null || mix.perPiece > 0);
  return fits && (unit === undefined || (unit === "ml") === (by === "volume")) ? mix : null;
}

/** The same in words that read back. */
export function writeMix({ resin, hardener, by, perPiece }: Mix): string {
  const piece = perPiece === null ? "" : `, ${perPiece} ${by === "volume" ? "ml" : "g"} a piece`;
  return `${resin} to ${hardener} by ${by}${piece}`;
}

/** Parts of resin and hardener, and how much of both together a piece takes, in ml by volume or g by weight. */
export interface Mix {
  readonly resin: number;
  readonly hardener: number;
  readonly by: "volume" | "weight";
  readonly perPiece: number | null;
}

/** What a measurement may be at most: figure, to the ten-thousandth, and unit of `at most 10 %`. Null: not so written. */
export function readAtMost(text: string): { atMost: number; unit: string } | null {
  const [, figure, unit = ""] = AT_MOST.exec(text.trim()) ?? [];
  const atMost = roundTo(Number(figure), 10_000);
  return atMost <= MOST_MEASURED ? { atMost, unit: unit.trim() } : null;
}

function roundTo(value: number, parts: number): number {
  // Adding 0 makes of -0, which JSON cannot keep, a plain 0.
  return Math.round(value * parts) / parts + 0;
}

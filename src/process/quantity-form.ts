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
const ENERGY = /^(\d+(?:\.\d+)?)\s*kJ\s*\/\s*mol$/i;
/** Bonds of carbon break at some 350 kJ/mol: no coat cures by more than the half of it. */
const HIGHEST_ENERGY = 200;
const MILLIMETRES_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10 };
const MILLIMETRES_PER_INCH = 25.4;

/** Celsius, to the hundredth, of `21 °C`, `70 °F`, `70 F`. Null: not so written, or no air of this earth. */
export function readCelsius(text: string): number | null {
  const [, figure, scale = ""] = TEMPERATURE.exec(text.trim()) ?? [];
  if (figure === undefined) return null;
  const celsius = scale.toUpperCase() === "C" ? Number(figure) : ((Number(figure) - 32) * 5) / 9;
  return celsius >= COLDEST && celsius <= HOTTEST ? roundTo(celsius, 100) : null;
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

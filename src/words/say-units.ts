import { GRAMS_PER_OUNCE, MILLIMETRES_PER_INCH } from "../process/units.ts";
import type { Speech } from "./speech.ts";

/** A temperature in the maker's units, to the whole degree. `sayCelsius(21, us) === "70 °F"` */
export function sayCelsius(celsius: number, { units }: Pick<Speech, "units">): string {
  return units === "us" ? `${Math.round(celsius * 1.8 + 32)} °F` : `${celsius} °C`;
}

/** A temperature as read, to the tenth in °C. `sayReading(16.52, metric) === "16.5 °C"` */
export function sayReading(celsius: number, speech: Pick<Speech, "units">): string {
  return sayCelsius(Math.round(celsius * 10) / 10, speech);
}

/** A difference of temperatures in the maker's units. `sayDegrees(3, us) === "5.4 °F"` */
export function sayDegrees(celsius: number, { units }: Pick<Speech, "units">): string {
  const degrees = units === "us" ? celsius * 1.8 : celsius;
  return `${Math.round(degrees * 10) / 10} ${units === "us" ? "°F" : "°C"}`;
}

/**
 * A length in the maker's units: millimetres to the tenth, or inches in sixty-fourths as drills are marked, with `about`
 * where that is off by more than a twentieth of a millimetre.
 *
 * @example sayLength(7.9375, us) // "5/16 in"
 * @example sayLength(8, us) // "about 5/16 in"
 */
export function sayLength(millimetres: number, { units }: Pick<Speech, "units">): string {
  if (units !== "us") return `${Math.round(millimetres * 10) / 10} mm`;
  const parts = Math.max(1, Math.round((millimetres / MILLIMETRES_PER_INCH) * 64));
  const off = Math.abs((parts / 64) * MILLIMETRES_PER_INCH - millimetres);
  return `${off > 0.05 ? "about " : ""}${sayInches(parts)} in`;
}

/** Sixty-fourths as a whole number and a fraction in its lowest terms. `sayInches(72) === "1 1/8"` */
function sayInches(parts: number): string {
  const whole = Math.floor(parts / 64);
  let [over, under] = [parts % 64, 64];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  return [...(whole > 0 ? [`${whole}`] : []), ...(over > 0 ? [`${over}/${under}`] : [])].join(" ");
}

/** A range of weights in the maker's units. `sayGrams(15, 16, metric) === "15.0 to 16.0 g"` */
export function sayGrams(least: number, most: number, { units }: Pick<Speech, "units">): string {
  if (units !== "us") return `${least.toFixed(1)} to ${most.toFixed(1)} g`;
  return `${(least / GRAMS_PER_OUNCE).toFixed(2)} to ${(most / GRAMS_PER_OUNCE).toFixed(2)} oz`;
}

import type { Speech } from "./speech.ts";

/** Grams in an ounce: the international pound of 453.59237 g by 16, by definition (memory, not looked up). */
const GRAMS_PER_OUNCE = 28.349523125;

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

/** A range of weights in the maker's units. `sayGrams(15, 16, metric) === "15.0 to 16.0 g"` */
export function sayGrams(least: number, most: number, { units }: Pick<Speech, "units">): string {
  if (units !== "us") return `${least.toFixed(1)} to ${most.toFixed(1)} g`;
  return `${(least / GRAMS_PER_OUNCE).toFixed(2)} to ${(most / GRAMS_PER_OUNCE).toFixed(2)} oz`;
}

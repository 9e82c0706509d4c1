import { type Instant, MINUTE } from "../time/instant.ts";
import { readMoment } from "../time/read-moment.ts";
import type { Zone } from "../time/zone.ts";

/** A reading of the air as it was said, its moment already found. */
export interface SaidAir {
  readonly at: Instant;
  /** Null: the reading names none. */
  readonly place: string | null;
  readonly celsius: number;
  readonly humidityPercent: number;
  /** Why it cannot be right, in words; null: it can. */
  readonly doubt: string | null;
}

/** How times and bare temperatures are to be read. */
export interface AirWords {
  readonly now: Instant;
  readonly zone: Zone;
  /** The unit of a temperature that names none. */
  readonly unit: "C" | "F";
}

/** A figure; a comma of two is a decimal one where nothing before it says that it parts two columns. */
const FIGURE = String.raw`((?<![\w.,:-])-?\d{1,2},\d{1,2}|(?<![\w.])-?\d+(?:\.\d+)?)`;
const TEMPERATURE = new RegExp(String.raw`${FIGURE}\s*°?\s*([CF])(?![A-Za-z])`, "i");
const HUMIDITY = new RegExp(String.raw`${FIGURE}\s*%(?:\s*RH\b)?`, "i");
/** A sensor's clock may be a little ahead of ours. */
const AHEAD: number = 2 * MINUTE;
/** Letters of a line that a sentence about it shows: a pipe may hold one without end. */
const SHOWN = 60;
const LEAST_SECONDS = 1_000_000_000;
const LEAST_MILLISECONDS = LEAST_SECONDS * 1_000;

/**
 * Temperature and humidity in any order and unit, perhaps with a time: `62F 58%`, `58 % 16.5 °C`, `2026-03-24T21:59Z
 * 20C 50%`, or an object of JSON (after a topic, as subscribers print it, too). Without a time it is of now.
 *
 * @returns a sentence without its full stop where it cannot be understood
 */
export function readAirWords(text: string, as: AirWords): SaidAir | { readonly problem: string } {
  const object = /\{.*\}/s.exec(text)?.[0];
  if (object !== undefined) return readJson(object, as);
  const temperature = TEMPERATURE.exec(text);
  const humidity = HUMIDITY.exec(text);
  if (temperature === null || humidity === null) {
    const lacks = temperature === null ? "a temperature with its unit" : "a humidity in %";
    return { problem: `"${text.trim().slice(0, SHOWN)}" lacks ${lacks}: write 62F 58% or 16.5C 58%` };
  }
  const rest = text.replace(temperature[0], " ").replace(humidity[0], " ");
  const at = readTime(rest.replaceAll(/[,;\t]/g, " ").trim(), as);
  if (typeof at !== "number") return at;
  return judge({
    at,
    place: null,
    celsius: toCelsius(figureOf(temperature[1]), temperature[2] ?? as.unit),
    humidityPercent: figureOf(humidity[1]),
    as,
  });
}

/** A moment as text or as seconds or milliseconds since 1970; nothing at all is now. */
function readTime(text: string, { now, zone }: AirWords): Instant | { readonly problem: string } {
  if (text === "") return now;
  const count = /^\d{9,}(\.\d+)?$/.test(text) ? Number(text) : null;
  if (count !== null && count >= LEAST_MILLISECONDS) return Math.round(count);
  if (count !== null) return Math.round(count * 1_000);
  // No moment is written longer than that.
  const read = readMoment(text.slice(0, SHOWN), { now, zone });
  return "instant" in read ? read.instant : { problem: read.problem.replace(/\.$/, "") };
}

const KEYS = {
  at: /^(time|at|timestamp|ts|date|datetime|date[ _]?time)$/i,
  place: /^(place|location|room|where)$/i,
  celsius: /^(celsius|(t|temp|temperature)[ _]?\(?(°?\s?c)\)?)$/i,
  fahrenheit: /^(fahrenheit|(t|temp|temperature)[ _]?\(?(°?\s?f)\)?)$/i,
  temperature: /^(t|temp|temperature)$/i,
  humidity:
    /^(h|rh|hum|humidity|humiditypercent|humidity[ _]percent|relative[ _]humidity|(rh|humidity)\s*\(?%\)?)$/i,
} as const;

/** What a name of a JSON field or of a column stands for; null: nothing of ours. */
export function meaningOf(name: string): keyof typeof KEYS | null {
  const plain = name.trim().replaceAll(/^"|"$/g, "");
  const found = Object.entries(KEYS).find(([, form]) => form.test(plain));
  return found === undefined ? null : (found[0] as keyof typeof KEYS);
}

/** Fields by what they stand for, as a reading. */
export function readAirFields(
  fields: ReadonlyMap<string, unknown>,
  as: AirWords,
): SaidAir | { readonly problem: string } {
  const humidity = numberOf(fields.get("humidity"));
  const celsius = celsiusOf(fields, as);
  if (humidity === null || celsius === null) {
    const lacks = celsius === null ? "a temperature" : "a humidity";
    return { problem: `it lacks ${lacks}: temperature (or temperature_f) and humidity are wanted` };
  }
  const at = readTime(String(fields.get("at") ?? "").trim(), as);
  if (typeof at !== "number") return at;
  const place = fields.get("place");
  const named = typeof place === "string" && place.trim() !== "" ? place.trim() : null;
  return judge({ at, place: named, celsius, humidityPercent: humidity, as });
}

function readJson(text: string, as: AirWords): SaidAir | { readonly problem: string } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { problem: `"${text.slice(0, SHOWN)}" is no JSON` };
  }
  const fields = new Map<string, unknown>();
  for (const [name, field] of Object.entries(value as object)) {
    const meaning = meaningOf(name);
    if (meaning !== null) fields.set(meaning, field);
  }
  return readAirFields(fields, as);
}

function celsiusOf(fields: ReadonlyMap<string, unknown>, { unit }: AirWords): number | null {
  const celsius = numberOf(fields.get("celsius"));
  if (celsius !== null) return celsius;
  const fahrenheit = numberOf(fields.get("fahrenheit"));
  if (fahrenheit !== null) return toCelsius(fahrenheit, "F");
  const said = fields.get("temperature");
  const written = typeof said === "string" ? TEMPERATURE.exec(said) : null;
  if (written !== null) return toCelsius(figureOf(written[1]), written[2] ?? unit);
  const bare = numberOf(said);
  return bare === null ? null : toCelsius(bare, unit);
}

function numberOf(value: unknown): number | null {
  if (typeof value === "number") return value;
  const text = typeof value === "string" ? value.trim().replace(/\s*%$/, "") : "";
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}

const figureOf = (written = ""): number => Number(written.replace(",", "."));

function toCelsius(degrees: number, unit: string): number {
  return unit.toUpperCase() === "F" ? ((degrees - 32) * 5) / 9 : degrees;
}

/**
 * What the air of a bench may be: nobody coats at 50 °C, and a garage of 68 °F told as 68 °C would cure an epoxy in an hour;
 * no air is as dry as 2 %, and half a share of 1 told as 0.5 % would dry water-based paint at twice its pace. Our own, no
 * source.
 */
const BENCH_AIR = { coldest: -40, hottest: 50, driest: 2 };

/** Marks what no air of a bench can be; it is kept all the same, for somebody may want to know what the sensor said. */
function judge(said: Omit<SaidAir, "doubt"> & { readonly as: AirWords }): SaidAir {
  const { at, place, celsius, humidityPercent, as } = said;
  return { at, place, celsius, humidityPercent, doubt: doubtOf(said, as) };
}

function doubtOf({ at, celsius, humidityPercent }: Omit<SaidAir, "doubt">, { now }: AirWords): string | null {
  if (humidityPercent < 0 || humidityPercent > 100) {
    return `a humidity of ${humidityPercent} % cannot be, it is 0 to 100`;
  }
  if (humidityPercent < BENCH_AIR.driest) {
    return `${humidityPercent} % is drier than any air, so it may be a share of 1: 0.5 is 50 %`;
  }
  if (celsius < BENCH_AIR.coldest || celsius > BENCH_AIR.hottest) {
    return `${celsius.toFixed(1)} °C is no air of a bench, so the unit may be wrong`;
  }
  if (at > now + AHEAD) return "it is of the future, so the sensor's clock is wrong or in another zone";
  return null;
}

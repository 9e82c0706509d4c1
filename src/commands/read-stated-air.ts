import type { Setting } from "../journal/event.ts";
import { readCelsius } from "../process/quantity-form.ts";
import type { CommandWords } from "./command-words.ts";

/** Taken where only temperatures are stated: the air of most sheets. */
const USUAL_HUMIDITY = 50;

/** The air of a day as stated by options; null: none was. One temperature alone holds the whole day. */
export function readStatedAir(words: CommandWords, place: string | null): Setting | null {
  const isStated = words.has("low") || words.has("high");
  if (words.has("unknown")) {
    if (isStated || words.has("humidity")) words.problems.push("say --unknown or the air of a day, not both");
    return { of: "air", place, day: null };
  }
  if (!isStated) {
    if (words.has("humidity"))
      words.problems.push("--humidity is of a day: say its temperatures too, --low 8C --high 20C");
    return null;
  }
  const low = readTemperature(words, words.has("low") ? "low" : "high");
  const high = readTemperature(words, words.has("high") ? "high" : "low");
  return { of: "air", place, day: { low, high, humidityPercent: readHumidity(words) } };
}

function readTemperature(words: CommandWords, option: string): number {
  const said = words.option(option) ?? "";
  const celsius = readCelsius(said);
  if (celsius === null) words.problems.push(`--${option} "${said}" is no temperature: write 8C or 46F`);
  return celsius ?? 0;
}

function readHumidity(words: CommandWords): number {
  const said = words.option("humidity");
  const percent = Number((said ?? `${USUAL_HUMIDITY}`).replace(/\s*%$/, ""));
  const fits = percent >= 0 && percent <= 100;
  if (!fits) words.problems.push(`--humidity "${said}" is no humidity: write a figure from 0 to 100 %`);
  return fits ? percent : USUAL_HUMIDITY;
}

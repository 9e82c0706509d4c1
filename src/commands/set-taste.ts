import { sayList } from "../words/say-list.ts";
import type { Taste } from "../workshop/taste.ts";
import { TASTE_WORDS } from "../workshop/taste.ts";
import { writeTaste } from "../workshop/taste-file.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";

/** What taste has, as it is named on the command line. */
export const KEYS = {
  units: "units",
  clock: "clock",
  week: "firstDayOfWeek",
  colour: "colour",
} as const satisfies Record<string, keyof Taste>;

/** `settings clock 12`: how the maker likes things told. It changes no answer, so it is in no journal. */
export async function setTaste(of: keyof typeof KEYS, words: CommandWords, bench: Bench): Promise<Answer> {
  const key = KEYS[of];
  const said = words.rest() ?? "";
  const choices: Readonly<Record<string, Taste[keyof Taste]>> = TASTE_WORDS[key];
  const wanted = of === "week" ? said.slice(0, 3) : said;
  const found = Object.entries(choices).find(([word]) => word.toLowerCase() === wanted.toLowerCase());
  if (found === undefined) {
    return { problems: [`${of} cannot be "${said}": say ${sayList(Object.keys(choices), "or")}`] };
  }
  const [word, value] = found;
  const { workshop } = await bench.open();
  const trouble = await writeTaste(workshop.places.config, key, value);
  if (trouble !== null) return { problems: [trouble] };
  return { text: [`From now on ${of} is ${word}.`], json: { [of]: value } };
}

import { sayList } from "../words/say-list.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";
import { sayLastWords } from "./say-last-words.ts";

/** A station is cold, clean or empty again. With no station, the one set-up that stands. */
export const putaway: Command = {
  usage: ["putaway [STATION]"],
  says: "what stood at a station is put away: the pot is cold, the cup is clean",
  options: WHEN,
  examples: [
    ['putaway "lead pot"', "the pot is off and away"],
    ["putaway", "the one set-up that stands"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const station = words.rest() ?? (await onlyStanding(words, workshop));
    return perform(words, bench, { act: "put away", at: words.when(speech), station }, sayLastWords);
  },
};

/** The station whose set-up is the only one that stands; several or none are a problem of the words. */
async function onlyStanding(words: CommandWords, workshop: Workshop): Promise<string> {
  const { stations } = await workshop.shop();
  const standing = [...stations.values()].flatMap(({ station, setUp }) => (setUp === null ? [] : [station]));
  if (standing.length === 1) return standing[0] ?? "";
  words.problems.push(
    standing.length === 0 ? "nothing stands at any station" : `say which station: ${sayList(standing, "or")}`,
  );
  return "";
}

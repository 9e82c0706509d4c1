import { nearestWord } from "../process/nearest.ts";
import { sayList } from "../words/say-list.ts";
import type { CommandWords } from "./command-words.ts";

/** The second word of a command, as `show` of `coat show`; with none, the usual one. An unknown one is a problem. */
export function readSubword<W extends string>(words: CommandWords, known: readonly W[], usual: W): W {
  const said = words.word();
  if (said === null) return usual;
  const found = known.find((word) => word === said.toLowerCase());
  if (found !== undefined) return found;
  const near = nearestWord(said, known);
  // What follows was said of that word: it is not wrong by itself.
  words.rest();
  words.problems.push(
    `there is no "${said}" here: ${near === null ? `say ${sayList(known, "or")}` : `perhaps "${near}"`}`,
  );
  return usual;
}

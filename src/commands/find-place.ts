import { readPlace, type readPlaceOfAir } from "../words/read-place.ts";
import type { Opened } from "./bench.ts";
import type { CommandWords } from "./command-words.ts";

/**
 * The place that was named; null: none was named, or it is not known, and the problem told.
 *
 * @param readIt of readings of the air "the shop" is a place, too, and gives null
 */
export async function findPlace(
  said: string | null,
  words: CommandWords,
  { workshop }: Opened,
  readIt: typeof readPlaceOfAir = readPlace,
): Promise<string | null> {
  if (said === null) return null;
  const [{ processes }, shop] = await Promise.all([workshop.readLibrary(), workshop.shop()]);
  const read = readIt(said, processes, shop);
  if ("found" in read) return read.found;
  words.problems.push(read.problem);
  return null;
}

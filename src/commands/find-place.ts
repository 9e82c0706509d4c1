import type { Opened } from "./bench.ts";
import type { CommandWords } from "./command-words.ts";
import { matchIn } from "./match-in.ts";

/**
 * The place that was named, of those that processes, pieces or settings name; null: none was named, or it is not known,
 * and the problem told.
 */
export async function findPlace(
  said: string | null,
  words: CommandWords,
  { workshop }: Opened,
): Promise<string | null> {
  if (said === null) return null;
  const [{ processes }, shop] = await Promise.all([workshop.readLibrary(), workshop.shop()]);
  const pieces = [...shop.pieces.values()];
  const named = [
    ...processes.flatMap(({ definition }) => definition.steps),
    ...pieces.flatMap(({ route }) => route),
    ...pieces,
  ].map(({ place }) => place);
  const places = new Set([...named, ...shop.settings.places.keys(), ...shop.settings.statedAir.keys()]);
  const known = [...places].filter((place) => place !== null);
  const found = matchIn("place", said, known, (place) => place);
  if ("found" in found) return found.found;
  words.problems.push(`${found.problem}; settings place "${said}" 4 makes it one, of 4 hooks`);
  return null;
}

import type { Tag } from "../journal/event.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { CommandWords } from "./command-words.ts";

/** What is in hand, where no tags were said: `hang`, `leave`. That nothing is in hand is a problem of the words. */
export async function tagsInHand(words: CommandWords, workshop: Workshop): Promise<readonly Tag[]> {
  const { pieces } = await workshop.shop();
  const tags = [...pieces.values()]
    .filter(({ hand, end }) => hand !== null && hand.takenAt !== null && end === null)
    .map(({ tag }) => tag);
  if (tags.length === 0) words.problems.push("nothing is in hand: say which tags: 14, 12-14 16");
  return tags;
}

import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";
import { sayLastWords } from "./say-last-words.ts";
import { tagsInHand } from "./tags-in-hand.ts";

/** Puts work down half-done. With no tags, all that is in hand; a coat begun is refused, for it cannot wait. */
export const leave: Command = {
  usage: ["leave TAGS", "leave"],
  says: "puts work down half-done, to go on with it later",
  options: WHEN,
  examples: [
    ["leave 14", "14 is put down; take 14 goes on with it"],
    ["leave", "all that is in hand is put down"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const said = words.tags();
    const tags = said.length > 0 ? said : await tagsInHand(words, workshop);
    return perform(words, bench, { act: "leave", at: words.when(speech), tags }, sayLastWords);
  },
};

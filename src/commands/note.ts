import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

/** A line of the maker's, kept with pieces or with the shop, and shown plain. */
export const note: Command = {
  usage: ["note TAGS TEXT", "note TEXT"],
  says: "writes a line down, with pieces or of the whole shop; the week tells it",
  options: WHEN,
  examples: [
    ['note 14 "runs a little deep"', "kept with 14"],
    ['note 12-14 "new tin of varnish" --ago 1h', "kept with each of the three"],
    ['note "the heater was off all night"', "kept of the whole shop"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.tags();
    const text = words.needRest('say what to note: note 14 "runs a little deep"');
    return perform(words, bench, { act: "note", at: words.when(speech), tags, text });
  },
};

import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

export const note: Command = {
  usage: ["note TAGS TEXT"],
  says: "writes a line down with pieces, or with the shop",
  options: WHEN,
  examples: [
    ['note 14 "runs a little deep"', "kept with 14"],
    ['note "new tin of varnish opened"', "kept with the shop"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.tags();
    const text = words.needRest('say what to note: note 14 "runs a little deep"');
    return perform(words, bench, { act: "note", at: words.when(speech), tags, text });
  },
};

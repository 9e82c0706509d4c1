import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

/** Another place to hang, with its own hooks and air. */
export const move: Command = {
  usage: ["move TAGS PLACE"],
  says: "hangs pieces in another place",
  options: WHEN,
  examples: [
    ['move 14 "warm box"', "14 hangs in the warm box from now on"],
    ["move 12-14 rack --ago 1h", "an hour ago, three pieces to the rack"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.needTags();
    const place = words.needRest("say where to: rack, turning wheel, warm box");
    return perform(words, bench, { act: "move", at: words.when(speech), tags, place });
  },
};

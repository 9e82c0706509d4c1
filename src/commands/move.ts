import { type Command, WHEN } from "./command.ts";
import { findPlace } from "./find-place.ts";
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
    const opened = await bench.open();
    const tags = words.needTags();
    const said = words.needRest("say where to: rack, turning wheel, warm box");
    const place = words.problems.length > 0 ? said : ((await findPlace(said, words, opened)) ?? said);
    return perform(words, bench, { act: "move", at: words.when(opened.speech), tags, place });
  },
};

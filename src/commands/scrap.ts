import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

/** Gives pieces up. Their past stays, and the week counts them. */
export const scrap: Command = {
  usage: ["scrap TAGS WHY"],
  says: "gives pieces up, and keeps why",
  options: WHEN,
  examples: [['scrap 14 "split along the grain"', "14 is out of the shop; undo takes it back"]],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.needTags();
    const why = words.needRest('say why: scrap 14 "split along the grain"');
    return perform(words, bench, { act: "scrap", at: words.when(speech), tags, why });
  },
};

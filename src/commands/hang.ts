import { ANYWAY, type Command, TICKED, WHEN } from "./command.ts";
import { findPlace } from "./find-place.ts";
import { perform } from "./perform.ts";
import { readAnyway, splitResult } from "./read-work.ts";
import { sayLastWords } from "./say-last-words.ts";
import { tagsInHand } from "./tags-in-hand.ts";

/**
 * Hands-on is done. With no tags, all that is in hand. Words after the tags may name the step, an answer of a step with
 * answers, or both. Near closing time it ends with what still stands and what comes next.
 */
export const hang: Command = {
  usage: ["hang TAGS [STEP] [ANSWER]", "hang"],
  says: "hands-on is done: the cure runs from here",
  options: {
    step: { value: "STEP", says: "the step, if several fit" },
    result: { value: "ANSWER", says: "what the test gave, for a step with answers" },
    place: { value: "PLACE", says: "where it hangs, if not in the usual place" },
    colour: { value: "COLOUR", says: "the colour that was sprayed" },
    "flash-off": { value: "MINUTES", says: "how long this pass must flash off" },
    "as-usual": { value: null, says: "it was hung at its usual time; nothing is learned from it" },
    ...TICKED,
    ...ANYWAY,
    ...WHEN,
  },
  examples: [
    ["hang 14", "14 is done and hangs from now on"],
    ["hang", "all that is in hand is done"],
    ["hang 12-14 16 --ago 20m", "four pieces, twenty minutes ago"],
    ["hang 14 --at 20:15", "at a quarter past eight"],
    ["hang 4 tune", "the water test says tune: it goes back to the step its process names"],
    ["hang 1 --as-usual", "it was forgotten: hung after its usual minutes"],
    ['hang 16 --colour ochre --flash-off 5 --place "warm box"', "a pass as it was sprayed"],
  ],
  async run(words, bench) {
    const opened = await bench.open();
    const { workshop, speech } = opened;
    if (words.has("as-usual") && (words.has("at") || words.has("ago")))
      words.problems.push("say --as-usual or when it was, not both");
    const said = words.tags();
    const tags = said.length > 0 ? said : await tagsInHand(words, workshop);
    const { step, result } = await splitResult(words, tags, workshop);
    return perform(
      words,
      bench,
      {
        act: "hang",
        at: words.when(speech),
        tags,
        step: words.option("step") ?? step,
        colour: words.option("colour"),
        flashOff: words.minutes("flash-off"),
        place: await findPlace(words.option("place"), words, opened),
        result: words.option("result") ?? result,
        asUsual: words.has("as-usual"),
        anyway: readAnyway(words),
        ticked: words.options("ticked"),
      },
      sayLastWords,
    );
  },
};

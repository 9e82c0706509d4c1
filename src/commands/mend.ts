import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

/** What a flaw needed. The step named and all after it are open again; what was done before stays in the journal. */
export const mend: Command = {
  usage: ["mend TAGS WHAT --minutes MINUTES --then STEP"],
  says: "a flaw was put right; the step named and all after it are open again",
  options: {
    minutes: { value: "MINUTES", says: "how long it took" },
    // biome-ignore lint/suspicious/noThenProperty: nothing awaits the table of options.
    then: { value: "STEP", says: "the step to go on from" },
    ...WHEN,
  },
  examples: [
    ['mend 14 "level the run" --minutes 10 --then "first clear"', "levelled; the first clear is laid again"],
    ['mend 5 "glue the hanger" --minutes 5 --then hangers', "a finished piece is out again"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.needTags();
    const what = words.needRest('say what was done to the flaw: mend 14 "level the run"');
    words.needOption("minutes", "say how long it took: --minutes 10");
    const goOnFrom = words.needOption("then", 'say the step to go on from: --then "first clear"');
    const minutes = words.minutes("minutes") ?? 0;
    return perform(words, bench, { act: "mend", at: words.when(speech), tags, what, minutes, goOnFrom });
  },
};

import type { Tag } from "../journal/event.ts";
import { sayIfHung } from "../words/say-how-sure.ts";
import { ANYWAY, type Command, TICKED, WHEN } from "./command.ts";
import { findCautions } from "./find-cautions.ts";
import { type Done, perform } from "./perform.ts";
import { readAnyway, splitColour } from "./read-work.ts";
import { sayWarnings } from "./say-warnings.ts";
import { amountsOf, sheetOf } from "./show-sheet.ts";

/**
 * The work begins. Words after the tags may name the step, a colour of the scheme, or both. Said with it: what should be
 * known before the coat is laid, a line for each caution read before, and what is to be weighed or measured out for all of
 * them, or the whole set-up sheet if asked for.
 */
export const take: Command = {
  usage: ["take TAGS [STEP] [COLOUR]"],
  says: "takes pieces in hand: the work begins",
  options: {
    step: { value: "STEP", says: "the step, if several fit" },
    colour: { value: "COLOUR", says: "the colour of this pass; one the scheme has not makes another pass" },
    sheet: { value: null, says: "shows the set-up sheet of the step" },
    ...TICKED,
    ...ANYWAY,
    ...WHEN,
  },
  examples: [
    ["take 14", "takes 14 for the step that is open"],
    ["take 12-14 16", "takes four pieces together, all or none"],
    ["take 14 detail --colour ochre", "names the step and the colour"],
    ["take 14 --sheet", "shows nozzle, mix and passes too"],
    ['take 3 --ticked "molten lead"', "says that the caution was read"],
    ['take 14 --anyway "the heater was on"', "goes on although it opens later"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const tags = words.needTags();
    const said = await splitColour(words, tags, workshop);
    return perform(
      words,
      bench,
      {
        act: "take",
        at: words.when(speech),
        tags,
        step: words.option("step") ?? said.step,
        colour: words.option("colour") ?? said.colour,
        anyway: readAnyway(words),
        ticked: words.options("ticked"),
      },
      async (done, opened) => [
        ...(await sayWarnings(done, opened)),
        ...sayIfHung(takenBy(done), done.shop, opened.speech),
        ...(await findCautions(done, opened)),
        ...(words.has("sheet") ? await sheetOf(done, opened) : amountsOf(done, opened)),
      ],
    );
  },
};

/** What was taken for a step itself, not for its preparation. */
function takenBy({ events }: Done): readonly { readonly tag: Tag; readonly step: string }[] {
  return events.flatMap((event) =>
    event.kind === "taken" && event.tag !== null && event.part === "step"
      ? [{ tag: event.tag, step: event.step }]
      : [],
  );
}

import type { RouteChange } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import { LONGEST_HANDS_ON } from "../process/hands-on-form.ts";
import { matchIn } from "../words/match-in.ts";
import { sayList } from "../words/say-list.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";

/** Another way for these pieces only: their process file stays as it is, the change is an act like any other. */
export const route: Command = {
  usage: [
    "route TAGS --put NAME --like STEP --after STEP",
    "route TAGS --skip STEP",
    "route TAGS --swap STEP --like STEP",
  ],
  says: "changes the steps of these pieces only: one put in, skipped or swapped",
  options: {
    put: { value: "NAME", says: "what the step put in is called" },
    after: { value: "STEP", says: "where it is put in" },
    skip: { value: "STEP", says: "goes without this step" },
    swap: { value: "STEP", says: "works another step in place of this one" },
    like: { value: "STEP", says: "worked like this step" },
    coat: { value: "COAT", says: "with another coat" },
    minutes: { value: "MINUTES", says: "hands-on of the step put in" },
    why: { value: "WHY", says: "why; it is kept" },
    ...WHEN,
  },
  examples: [
    ['route 14 --skip "second seal" --why "hard maple"', "14 goes without"],
    ['route 14 --put "third clear" --like "last clear" --after "last clear"', "14 gets one coat more"],
    ['route 14 --swap "last clear" --like "last clear" --coat "brushing varnish"', "in another coat"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const tags = words.needTags();
    const change = await readChange(words, workshop);
    return perform(words, bench, {
      act: "route",
      at: words.when(speech),
      tags,
      change,
      why: words.option("why"),
    });
  },
};

/** One of put in, skip and swap; anything else is a problem, and what is then given back is not used. */
async function readChange(words: CommandWords, workshop: Workshop): Promise<RouteChange> {
  const ways = ["put", "skip", "swap"].filter((way) => words.has(way));
  if (ways.length !== 1) {
    words.problems.push(
      ways.length === 0
        ? "say --put, --skip or --swap"
        : `say only one of ${sayList(ways.map((way) => `--${way}`))}`,
    );
  }
  const skip = words.option("skip");
  if (skip !== null) return { do: "skip", step: skip };
  const coat = await readCoatNamed(words, workshop);
  const swap = words.option("swap");
  if (swap !== null) return { do: "swap", step: swap, like: words.option("like") ?? swap, coat };
  const minutes = words.minutes("minutes");
  if (minutes !== null && (minutes < 1 || minutes > LONGEST_HANDS_ON))
    words.problems.push("a step has 1 minute to a day of hands-on: write --minutes 1 to 1440");
  const handsOn = minutes === null ? null : { low: minutes, likely: minutes, high: minutes };
  const name = words.option("put") ?? "";
  if (ways.length === 1) {
    words.needOption("like", 'say which step it is worked like: --like "last clear"');
    words.needOption("after", 'say after which step: --after "last clear"');
  }
  return {
    do: "put",
    name,
    like: words.option("like") ?? "",
    after: words.option("after") ?? "",
    coat,
    handsOn,
  };
}

async function readCoatNamed(words: CommandWords, workshop: Workshop): Promise<Coat | null> {
  const said = words.option("coat");
  if (said === null) return null;
  const { coats } = await workshop.readLibrary();
  const found = matchIn("coat", said, coats, ({ coat }) => coat.name);
  if ("problem" in found) words.problems.push(found.problem);
  return "found" in found ? found.found.coat : null;
}

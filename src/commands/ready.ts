import { matchName } from "../acts/match-name.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { ANYWAY, type Command, TICKED, WHEN } from "./command.ts";
import { findCautions } from "./find-cautions.ts";
import { perform } from "./perform.ts";
import { readAnyway } from "./read-work.ts";

/**
 * A set-up stands, or is begun and will stand. The station's name may be short and its set-up follow it, since both are
 * known: `ready pot`, `ready spray load ochre`. Cautions of what it is for are read before it is begun.
 */
export const ready: Command = {
  usage: ["ready STATION [SET-UP]", "ready STATION --beginning"],
  says: "a set-up is ready, or is begun: the pot is hot, the cup is mixed, the brush is loaded",
  options: {
    begun: { value: "TIME", says: "when it was begun, the pot lit" },
    beginning: { value: null, says: "it is begun now and ready after its usual minutes" },
    ...TICKED,
    ...ANYWAY,
    ...WHEN,
  },
  examples: [
    ['ready "lead pot"', "the pot is hot"],
    ['ready "lead pot" --begun 19:50', "hot now, lit at ten to eight"],
    ['ready "lead pot" --beginning', "the pot is lit now"],
    ['ready "spray corner" "load ochre"', "names what is loaded"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const said = words.needRest("say which station: lead pot, spray corner, bench");
    const { station, what } = await splitStation(said, workshop);
    const beginning = words.has("beginning");
    if (beginning && words.has("begun")) words.problems.push("say --begun or --beginning, not both");
    return perform(
      words,
      bench,
      {
        act: "ready",
        at: words.when(speech),
        station,
        what,
        begun: words.moment("begun", speech),
        beginning,
        anyway: readAnyway(words),
        ticked: words.options("ticked"),
      },
      findCautions,
    );
  },
};

/** The station at the head of the words, and after it the set-up: the longest head that names a known station wins. */
async function splitStation(
  said: string,
  workshop: Workshop,
): Promise<{ station: string; what: string | null }> {
  const { pieces, stations } = await workshop.shop();
  const known = [
    ...new Set([
      ...stations.keys(),
      ...[...pieces.values()].flatMap(({ route }) => route.map((step) => step.station)),
    ]),
  ];
  const parts = said.split(" ");
  for (let count = parts.length; count > 0; count--) {
    const match = matchName(parts.slice(0, count).join(" "), known);
    if ("found" in match) return { station: match.found, what: parts.slice(count).join(" ") || null };
  }
  return { station: said, what: null };
}

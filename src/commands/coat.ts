import { RESIN_ENERGY_RANGE, SOLVENT_ENERGY_RANGE } from "../cure/cure-rate.ts";
import { timesInAir } from "../cure/times-in-air.ts";
import { cureFactors, TESTS_FROM } from "../learned/cure-tests.ts";
import { type Coat, STAGES } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import { layOut } from "../words/lay-out.ts";
import { matchIn } from "../words/match-in.ts";
import { sayAir } from "../words/say-air.ts";
import { sayCoatSheet, sayHandsOn } from "../words/say-step.ts";
import { sayWait } from "../words/say-time.ts";
import { sayFactor } from "../words/say-touch.ts";
import type { Speech } from "../words/speech.ts";
import type { LibraryCoat } from "../workshop/library.ts";
import type { Bench } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { readOtherAir } from "./read-other-air.ts";
import { readSubword } from "./read-subword.ts";

/** Coat files, shipped and the maker's own: listed, shown, checked, begun. Checking and writing load YAML and zod, so they are apart. */
export const coat: Command = {
  usage: [
    "coat [list]",
    "coat show NAME [--air 27C,45%]",
    "coat check [NAME or FILE]",
    "coat new NAME [--from COAT]",
  ],
  says: "the paints, sealers and resins your processes use",
  options: {
    from: { value: "COAT", says: "the coat the new file begins as" },
    air: { value: "AIR", says: "what other air would do to it: 27C,45%" },
  },
  examples: [
    ["coat", "lists them"],
    ['coat show "brushing varnish"', "how it dries, its windows, its mix"],
    ['coat "brushing varnish" --air 27C,45%', "what the warm box would do to its times"],
    ["coat check", "looks through all coat files"],
    ['coat new "my varnish" --from "brushing varnish"', "writes a file of your own to work from"],
  ],
  async run(words, bench) {
    const way = words.has("air") ? "show" : readSubword(words, ["list", "show", "check", "new"], "list");
    if (words.has("air") && words.ahead()[0] === "show") words.word();
    if (way === "list") return list(words, bench);
    if (way === "show") return show(words, bench);
    if (way === "check") {
      const { checkCoats } = await import("./check-coats.ts");
      return checkCoats(words, bench);
    }
    const { newCoat } = await import("./new-coat.ts");
    return newCoat(words, bench);
  },
};

/** A line a coat: what drives its cure and when it is hard. */
async function list(words: CommandWords, bench: Bench): Promise<Answer> {
  words.nothingMore();
  if (words.problems.length > 0) return { problems: words.problems };
  const { coats } = await (await bench.open()).workshop.readLibrary();
  const rows = coats.map(({ coat: { name, curesBy, stages }, shipped }) => [
    name,
    `cures by ${curesBy}`,
    stages["dry-hard"] === undefined ? "" : `dry-hard ${sayWait(stages["dry-hard"])}`,
    shipped ? "" : "your own",
  ]);
  return { text: layOut(rows, bench.context.columns), json: { coats: coats.map(coatJson) } };
}

/** Everything its file says, in sentences. */
async function show(words: CommandWords, bench: Bench): Promise<Answer> {
  const said = words.needRest('say which coat: coat show "brushing varnish"');
  if (words.problems.length > 0) return { problems: words.problems };
  const { workshop, speech } = await bench.open();
  const air = readOtherAir(words);
  if (words.problems.length > 0) return { problems: words.problems };
  const { coats } = await workshop.readLibrary();
  const found = matchIn("coat", said, coats, (each) => each.coat.name);
  if ("problem" in found) return { problems: [found.problem] };
  const { coat: shown, file } = found.found;
  const stages = STAGES.flatMap((stage) => {
    const after = shown.stages[stage];
    return after === undefined ? [] : [`${stage} after ${sayWait(after)}`];
  });
  const firsts = shown.windows.flatMap(({ first }) =>
    first === null ? [] : [`${first.do}: ${sayHandsOn(first.handsOn)}`],
  );
  if (air !== null) return inOtherAir(shown, air, speech);
  const felt = cureFactors(await workshop.journal.cureTests(speech.now - TESTS_FROM)).get(shown.name);
  const learned = felt === undefined ? null : sayFactor(shown.name, felt);
  const lines = [
    ...sayCoatSheet(shown, speech).map((line) => line.replace(/^coat: /, "")),
    ...stages,
    ...(shown.feelFirst ? ["never opens by the clock alone: a touch must say so"] : []),
    ...(shown.flashOff > 0 ? [`flash-off ${sayWait(shown.flashOff)}`] : []),
    ...firsts,
    ...shown.givesOff.map(
      ({ what, lasts }) =>
        `gives off ${what}${lasts === 0 ? "" : ` for ${lasts === "while set up" ? "as long as it is set up" : sayWait(lasts)}`}`,
    ),
    ...shown.cautions.map((caution) => `caution: ${caution}`),
    ...(learned === null ? [] : [learned]),
    `file: ${file}`,
  ];
  return {
    text: [...lines.slice(0, 1), ...lines.slice(1).map((line) => `  ${line}`)],
    json: coatJson(found.found),
  };
}

/** A coat's times in other air, beside those of its sheet. */
function inOtherAir(coat: Coat, air: Air, speech: Speech): Answer {
  const times = timesInAir(coat, air);
  const row = ({ what, bySheet, here }: (typeof times)[number]) => [
    what,
    sayWait(bySheet),
    here === null ? "never" : sayWait(here),
  ];
  const sheet = sayAir(coat.sheetAir, speech);
  const head = `${coat.name}, cures by ${coat.curesBy}: by its sheet at ${sheet}, and at ${sayAir(air, speech)} (predicted)`;
  const lines = layOut(times.map(row), null).map((line) => `  ${line}`);
  return { text: [head, ...lines, ...howSure(coat, air)], json: { coat: coat.name, air, times } };
}

/** How sure a prediction is: solvents follow no such law, and resins whose sheet tells no energy differ. */
function howSure(coat: Coat, air: Air): readonly string[] {
  const isTold = coat.activationEnergy != null;
  if (coat.curesBy === "solvent") {
    const between = isTold ? null : hardBetween(coat, air, SOLVENT_ENERGY_RANGE);
    const more = between === null ? "" : `; ${between}, from ours to how butyl acetate evaporates`;
    return [`  solvents follow no law as simple: an approximation${more}`];
  }
  const between = isTold || coat.curesBy !== "resin" ? null : hardBetween(coat, air, RESIN_ENERGY_RANGE);
  return between === null
    ? []
    : [`  its sheet tells no activation energy: ${between}, as published for epoxies`];
}

/** `dry-hard 7 h to 8 h by 30 to 43 kJ/mol`; null: never, or its sheet names no such stage. */
function hardBetween(coat: Coat, air: Air, energies: readonly [number, number]): string | null {
  const hards = energies.map((activationEnergy) =>
    timesInAir({ ...coat, activationEnergy }, air).find(({ what }) => what === "dry-hard"),
  );
  const said = hards.flatMap((time) => (time?.here == null ? [] : [sayWait(time.here)]));
  return said.length < hards.length
    ? null
    : `dry-hard ${said.join(" to ")} by ${energies.join(" to ")} kJ/mol`;
}

function coatJson({ coat: { name, ...rest }, file, shipped }: LibraryCoat): object {
  return { name, ...rest, file, shipped };
}

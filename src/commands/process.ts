import { coatInAir } from "../cure/coat-in-air.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Step } from "../process/step.ts";
import { layOut } from "../words/lay-out.ts";
import { matchIn } from "../words/match-in.ts";
import { sayAir } from "../words/say-air.ts";
import { sayList } from "../words/say-list.ts";
import { sayBallast, sayHandsOn, saySetUp, sayWindows } from "../words/say-step.ts";
import { sayWait } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import type { Bench } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { readOtherAir } from "./read-other-air.ts";
import { readSubword } from "./read-subword.ts";

/** Process files, shipped and the maker's own: listed, shown, checked, begun. Checking and writing load YAML and zod, so they are apart. */
export const process: Command = {
  usage: [
    "process [list]",
    "process show NAME [--air 27C,45%]",
    "process check [NAME or FILE]",
    "process new NAME [--from PROCESS or TAG]",
  ],
  says: "the kinds of piece you make, each with its steps",
  options: {
    from: {
      value: "PROCESS or TAG",
      says: "what the new file begins as; a tag: as that piece was really done",
    },
    air: { value: "AIR", says: "what other air would do to its waits and windows: 27C,45%" },
  },
  examples: [
    ["process", "lists them"],
    ['process show "carved walker"', "its steps, waits and windows"],
    ['process show "carved walker" --air 27C,45%', "the same in a warm box"],
    ["process check", "looks through all files, and says what your hours make impossible"],
    ["process check my-walker.yaml", "looks through one file"],
    ['process new "my walker" --from "carved walker"', "writes a file of your own to work from"],
    ['process new "like 14" --from 14', "as 14 was really done"],
  ],
  async run(words, bench) {
    const way = readSubword(words, ["list", "show", "check", "new"], "list");
    if (way === "list") return list(words, bench);
    if (way === "show") return show(words, bench);
    if (way === "check") {
      const { checkProcesses } = await import("./check-processes.ts");
      return checkProcesses(words, bench);
    }
    const { newProcess } = await import("./new-process.ts");
    return newProcess(words, bench);
  },
};

/** A line a process, and that some files cannot be used, if so. */
async function list(words: CommandWords, bench: Bench): Promise<Answer> {
  words.nothingMore();
  if (words.problems.length > 0) return { problems: words.problems };
  const { processes, problems } = await (await bench.open()).workshop.readLibrary();
  const rows = processes.map(({ definition, shipped }) => [
    definition.name,
    `${definition.steps.length} steps`,
    `hands-on ${sayWait(definition.steps.reduce((sum, { handsOn }) => sum + handsOn.likely, 0))}`,
    shipped ? "" : "your own",
  ]);
  const broken =
    problems.length === 0
      ? []
      : ["", `Some files cannot be used: dryline process check says why (${problems.length}).`];
  return {
    text: [...layOut(rows, bench.context.columns), ...broken],
    json: {
      processes: processes.map(({ definition, file, shipped }) => ({
        name: definition.name,
        steps: definition.steps.length,
        file,
        shipped,
      })),
    },
  };
}

/** The steps as they are worked, each with what belongs to it. */
async function show(words: CommandWords, bench: Bench): Promise<Answer> {
  const said = words.needRest('say which process: process show "carved walker"');
  const air = readOtherAir(words);
  if (words.problems.length > 0) return { problems: words.problems };
  const { workshop, speech } = await bench.open();
  const { processes } = await workshop.readLibrary();
  const found = matchIn("process", said, processes, ({ definition }) => definition.name);
  if ("problem" in found) return { problems: [found.problem] };
  const { definition, hash, file, shipped } = found.found;
  if (air !== null) return showInAir(definition, air, speech);
  const title = `${definition.name}: ${definition.piece}, ${definition.steps.length} steps`;
  const note = definition.note === null ? [] : [definition.note];
  const steps = definition.steps.flatMap((step, index) => sayStep(step, index, definition, speech));
  return {
    text: [title, ...note, "", ...steps, "", `file: ${file}`],
    json: { ...definition, hash, file, shipped },
  };
}

/** The same with every coat's times as other air makes them. */
function showInAir(definition: ProcessDefinition, air: Air, speech: Speech): Answer {
  const coats = Object.entries(definition.coats).map(([name, coat]) => [name, coatInAir(coat, air)] as const);
  const never = coats.flatMap(([name, coat]) => (coat === null ? [`${name} does not cure in it`] : []));
  const there = {
    ...definition,
    coats: Object.fromEntries(coats.flatMap(([name, coat]) => (coat === null ? [] : [[name, coat]]))),
  };
  const title = `${definition.name} in air of ${sayAir(air, speech)} (predicted)`;
  const steps = definition.steps.flatMap((step, index) => sayStep(step, index, there, speech));
  return { text: [title, ...never, "", ...steps], json: { ...there, air, neverCures: never.length } };
}

/** A step in a line, and below it what belongs to it. */
function sayStep(step: Step, index: number, definition: ProcessDefinition, speech: Speech): string[] {
  const coat = step.coat === null ? undefined : definition.coats[step.coat];
  const above = definition.steps[index - 1]?.name;
  const usualAfter = step.after.length === (above === undefined ? 0 : 1) && step.after[0] === above;
  const below = [
    ...(usualAfter ? [] : [step.after.length === 0 ? "can begin at once" : `after ${sayList(step.after)}`]),
    ...(step.setUp === null ? [] : [`set up: ${saySetUp(step.setUp)}`]),
    ...(coat === undefined
      ? []
      : [
          `coat: ${coat.name}${coat.windows.length === 0 ? "" : `, next coat ${sayWindows(coat).join("; ")}`}`,
        ]),
    ...(step.waitsFor === null ? [] : [`waits for ${step.waitsFor}`]),
    ...(step.wait === 0 ? [] : [`then waits ${sayWait(step.wait)}`]),
    ...step.needs.map(({ what, atMost, unit }) => `needs ${what} at most ${atMost} ${unit}`),
    ...sayBallast(step, speech),
    ...(step.mayStop ? ["can be left half-done"] : []),
    ...(step.result === null ? [] : [`answers: ${sayAnswers(step.result)}`]),
    ...(step.cautions.length === 0 ? [] : [`cautions: ${step.cautions.join(", ")}`]),
  ];
  const passes = step.passes === "scheme" ? " a pass" : "";
  const head = `${String(index + 1).padStart(3)}  ${step.name}, ${step.station}, ${sayHandsOn(step.handsOn)}${passes}`;
  return [head, ...below.map((line) => `       ${line}`)];
}

function sayAnswers(result: NonNullable<Step["result"]>): string {
  return sayList(
    Object.entries(result).map(
      ([answer, goes]) => `${answer} (${"backTo" in goes ? `back to ${goes.backTo}` : "goes on"})`,
    ),
    "or",
  );
}

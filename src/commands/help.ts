import { matchName } from "../acts/match-name.ts";
import { nearestWord } from "../process/nearest.ts";
import { GLOSSARY } from "../words/glossary.ts";
import { layOut } from "../words/lay-out.ts";
import { sayCaution } from "../words/say-caution.ts";
import { capital } from "../words/say-list.ts";
import { sayReckoned } from "../words/say-reckoned.ts";
import type { Bench } from "./bench.ts";
import type { Answer, Command, Group } from "./command.ts";
import { COMMAND_WORDS, COMMANDS } from "./command-table.ts";
import { helpOf } from "./help-of.ts";

const GROUPS: readonly Group[] = ["what now", "at the bench", "the shop", "the trade", "beside"];

/** Help on everything that has a name: commands, words of the trade, cautions. */
export const help: Command = {
  usage: ["help", "help WORD"],
  says: "all commands; or a command, a word of the trade, or a caution told whole",
  options: {},
  examples: [
    ["help", "all commands"],
    ["help hang", "how to say hang"],
    ["help window", "what a window is"],
    ['help "molten lead"', "the whole text of that caution"],
  ],
  async run(words, bench) {
    const said = words.rest();
    if (said === null) return overview(bench);
    const entry = Object.hasOwn(COMMANDS, said) ? COMMANDS[said] : undefined;
    const word = said.toLowerCase();
    const glossary = Object.hasOwn(GLOSSARY, word) ? GLOSSARY[word] : undefined;
    if (entry !== undefined) {
      const meaning =
        glossary === undefined || said === "coat" || said === "process"
          ? []
          : [`${capital(said)}: ${glossary}.`, ""];
      const text = [...meaning, ...helpOf(said, await entry.load())];
      return { text, json: { help: text } };
    }
    if (glossary !== undefined)
      return { text: [`${capital(said)}: ${glossary}.`], json: { word: said, means: glossary } };
    return caution(said, bench);
  },
};

/** All commands in their groups, a line each, and where more is told. */
async function overview({ context }: Bench): Promise<Answer> {
  const all = await Promise.all(
    Object.entries(COMMANDS).map(async ([word, { group, load }]) => ({
      word,
      group,
      says: (await load()).says,
    })),
  );
  const sections = GROUPS.flatMap((group) => {
    const rows = all
      .filter((command) => command.group === group)
      .map(({ word, says }) => [word.padEnd(10), says]);
    return ["", capital(group), ...layOut(rows, context.columns)];
  });
  const text = [
    "dryline: a plan for everything in the shop that dries, cures or soaks.",
    "Alone it opens the dashboard; in a pipe it says what now says.",
    ...sections,
    "",
    'dryline help WORD tells more: a command, as "help hang"; a word, as "help window"; a caution, as "help epoxy".',
    "All take --json; those that do something take --at TIME or --ago 20m.",
  ];
  return { text, json: { version: context.version, commands: all } };
}

/** A caution told whole; a word that nothing goes by has the nearest known one named. */
async function caution(said: string, bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const { cautions } = await workshop.rules();
  const match = matchName(said, Object.keys(cautions));
  const found = "found" in match ? cautions[match.found] : undefined;
  if (found !== undefined) {
    const reckoned = sayReckoned(found.name, await workshop.shop(), speech);
    return { text: sayCaution(found, reckoned), json: { ...found, reckoned } };
  }
  const known = [...COMMAND_WORDS, ...Object.keys(GLOSSARY), ...Object.keys(cautions)];
  const near = nearestWord(said, known);
  const hint = near === null ? '"dryline help" lists the commands' : `perhaps "${near}"`;
  return { problems: [`there is no help on "${said}": ${hint}`] };
}

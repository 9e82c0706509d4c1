import { hoursProblems } from "../process/check-hours.ts";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { sayProblem } from "../process/problem.ts";
import { readProcess } from "../process/read-process.ts";
import { sayHoursProblem } from "../process/say-hours-problem.ts";
import { localTime } from "../time/civil.ts";
import { matchIn } from "../words/match-in.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { readFileNamed } from "./read-file-named.ts";

/**
 * `process check [NAME or FILE]`: everything wrong with one process file, or with all of them, and of sound ones what
 * the maker's hours make impossible.
 */
export async function checkProcesses(words: CommandWords, bench: Bench): Promise<Answer> {
  const said = words.rest();
  if (words.problems.length > 0) return { problems: words.problems };
  const { processes, coats, rules, problems } = await (await bench.open()).workshop.readLibrary();
  if (said === null) {
    if (problems.length > 0) return { problems };
    return sayHours(
      processes.map(({ definition }) => definition),
      bench,
    );
  }
  const file = readFileNamed(said);
  if (file !== null && "problem" in file) return { problems: [file.problem] };
  if (file !== null) {
    const known: Record<string, Coat> = Object.fromEntries(coats.map(({ coat }) => [coat.name, coat]));
    const read = readProcess(file.text, {
      file: file.file,
      coats: known,
      cautions: Object.keys(rules.cautions),
    });
    if ("problems" in read) return { problems: read.problems.map(sayProblem) };
    return sayHours([read.definition], bench);
  }
  const found = matchIn("process", said, processes, ({ definition }) => definition.name);
  if ("problem" in found) {
    const broken = problems.filter((problem) => problem.includes(said.toLowerCase().replaceAll(" ", "-")));
    return { problems: broken.length > 0 ? broken : [found.problem] };
  }
  return sayHours([found.found.definition], bench);
}

/** What each sound process costs or loses under the maker's own hours. It is no fault of the file: exit 0. */
async function sayHours(definitions: readonly ProcessDefinition[], bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const hours = await workshop.hours();
  const today = localTime(speech.zone, speech.now).date;
  const told = definitions.map((definition) => ({
    process: definition.name,
    hours: hoursProblems(definition, hours, speech.zone, today).map(sayHoursProblem),
  }));
  const text = told.flatMap(({ process, hours: said }) =>
    said.length === 0
      ? [`"${process}" is sound, and fits your hours.`]
      : [`"${process}" is sound, but your hours make it hard:`, ...said.map((line) => `  ${line}`)],
  );
  return { text, json: { checked: told } };
}

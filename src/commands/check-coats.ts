import { sayProblem } from "../process/problem.ts";
import { readCoat } from "../process/read-coat.ts";
import { matchIn } from "../words/match-in.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { readFileNamed } from "./read-file-named.ts";

/** `coat check [NAME or FILE]`: everything wrong with one coat file, or with all of them. */
export async function checkCoats(words: CommandWords, bench: Bench): Promise<Answer> {
  const said = words.rest();
  if (words.problems.length > 0) return { problems: words.problems };
  const { coats, rules, problems } = await (await bench.open()).workshop.readLibrary();
  if (said === null) {
    const own = problems.filter((problem) => /[\\/]coats[\\/]/.test(problem));
    return own.length > 0
      ? { problems: own }
      : { text: [`All ${coats.length} coats are sound.`], json: { sound: coats.length } };
  }
  const file = readFileNamed(said);
  if (file !== null && "problem" in file) return { problems: [file.problem] };
  if (file !== null) {
    const read = readCoat(file.text, { file: file.file, cautions: Object.keys(rules.cautions) });
    if ("problems" in read) return { problems: read.problems.map(sayProblem) };
    return sound(read.coat.name);
  }
  const found = matchIn("coat", said, coats, ({ coat }) => coat.name);
  if ("problem" in found) {
    const broken = problems.filter((problem) => problem.includes(said.toLowerCase().replaceAll(" ", "-")));
    return { problems: broken.length > 0 ? broken : [found.problem] };
  }
  return sound(found.found.coat.name);
}

function sound(name: string): Answer {
  return { text: [`"${name}" is sound.`], json: { sound: name } };
}

import { join } from "node:path";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { writeCoat } from "../process/write-coat.ts";
import { writeProcess } from "../process/write-process.ts";
import { matchIn } from "../words/match-in.ts";
import { readTags } from "../words/read-tags.ts";
import type { Library } from "../workshop/library.ts";
import { ownProcesses } from "../workshop/library.ts";
import { asDone } from "./as-done.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { unfitName, writeOwnFile } from "./own-file.ts";

/** What a process begins as where none is named. */
const BLANK: ProcessDefinition["steps"][number] = {
  name: "shape",
  station: "bench",
  handsOn: { low: 30, likely: 45, high: 60 },
  mayStop: true,
  setUp: null,
  passes: "one",
  coat: null,
  waitsFor: null,
  wait: 0,
  place: null,
  until: null,
  after: [],
  look: [],
  givesOff: [{ what: "dust", lasts: 0 }],
  needs: [],
  ballast: null,
  cautions: [],
  result: null,
  sheet: {},
};

/** `process new NAME [--from PROCESS or TAG]`: writes a process file of the maker's own. */
export async function newProcess(words: CommandWords, bench: Bench): Promise<Answer> {
  const name = words.needRest('say what it is called: process new "my walker"');
  const unfit = unfitName(name);
  if (unfit !== null) words.problems.push(unfit);
  if (words.problems.length > 0) return { problems: words.problems };
  const { workshop } = await bench.open();
  const library = await workshop.readLibrary();
  if (library.processes.some(({ definition, shipped }) => definition.name === name && !shipped)) {
    return { problems: [`there is a process "${name}" of your own already: edit its file`] };
  }
  if (words.option("from") === null && library.processes.some(({ definition }) => definition.name === name)) {
    const own = `process new "${name}" --from "${name}"`;
    return { problems: [`a process "${name}" comes with dryline: ${own} makes it your own, to edit`] };
  }
  const from = await readFrom(words.option("from"), library, bench);
  if ("problem" in from) return { problems: [from.problem] };
  const folder = ownProcesses(workshop.places.data);
  const unknown = Object.values(from.definition.coats).filter((coat) => !isKept(coat, library));
  const clash = unknown.find(({ name: coat }) => library.coats.some((kept) => kept.coat.name === coat));
  // A file names its coats: one that has changed since would quietly change the process too.
  const note =
    clash === undefined
      ? []
      : [`The coat "${clash.name}" has changed since; the file takes it as it is now.`];
  const files: string[] = [];
  for (const coat of unknown.filter(
    ({ name: coat }) => !library.coats.some((kept) => kept.coat.name === coat),
  )) {
    const written = writeOwnFile(join(folder, "coats"), coat.name, writeCoat(coat));
    if ("problem" in written) return { problems: [written.problem] };
    files.push(written.file);
  }
  const written = writeOwnFile(folder, name, writeProcess({ ...from.definition, name }));
  if ("problem" in written) return { problems: [written.problem] };
  files.push(written.file);
  return {
    text: [
      ...files.map((file) => `Written: ${file}.`),
      ...note,
      `Edit it, then dryline process check "${name}".`,
    ],
    json: { file: written.file, files },
  };
}

/** Whether the library has this very coat: then the new file need only name it. */
function isKept(coat: Coat, { coats }: Library): boolean {
  return coats.some(
    (kept) => kept.coat.name === coat.name && JSON.stringify(kept.coat) === JSON.stringify(coat),
  );
}

/** What the new process begins as: a single step, a process of the library, or a piece as it was really done. */
async function readFrom(
  from: string | null,
  { processes }: Library,
  bench: Bench,
): Promise<{ readonly definition: ProcessDefinition } | { readonly problem: string }> {
  if (from === null) {
    return { definition: { name: "", piece: "lure", steps: [BLANK], coats: {}, note: null } };
  }
  const [tag, ...more] = readTags(from) ?? [];
  if (tag !== undefined && more.length === 0) {
    const { workshop } = await bench.open();
    const piece = (await workshop.shop({ of: "tags", tags: [tag] })).pieces.get(tag);
    return piece === undefined
      ? { problem: `there is no ${tag} to make a process from` }
      : { definition: asDone(piece) };
  }
  const found = matchIn("process", from, processes, ({ definition }) => definition.name);
  return "problem" in found ? found : { definition: found.found.definition };
}

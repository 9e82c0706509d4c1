/** The shipped files, and the invented ones of the made-up week, as texts and as read. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Coat } from "../../src/process/coat.ts";
import { type Problem, sayProblem } from "../../src/process/problem.ts";
import { readCoat } from "../../src/process/read-coat.ts";
import { readProcess } from "../../src/process/read-process.ts";
import { readCautions, readKeepApart } from "../../src/process/read-rules.ts";

const folder = join(import.meta.dirname, "../../processes");

export interface TextFile {
  readonly file: string;
  readonly text: string;
}

/** Every YAML file of a folder under processes/, in the order of names. */
function textsIn(path: string): TextFile[] {
  return readdirSync(path)
    .filter((file) => file.endsWith(".yaml"))
    .sort()
    .map((file) => ({ file, text: readFileSync(join(path, file), "utf8") }));
}

export const coatTexts = textsIn(join(folder, "coats"));
const others = textsIn(folder);
export const rulesTexts = others.filter(({ file }) => ["cautions.yaml", "keep-apart.yaml"].includes(file));
export const processTexts = others.filter((text) => !rulesTexts.includes(text));

/** What was read, or a failed test that tells every problem. */
export function unwrap<T extends object>(read: T | { readonly problems: readonly Problem[] }): T {
  if ("problems" in read) throw new Error(read.problems.map(sayProblem).join("\n"));
  return read;
}

function textOf(file: string): TextFile {
  const found = rulesTexts.find((text) => text.file === file);
  if (found === undefined) throw new Error(`processes/${file} is not there`);
  return found;
}

export const cautions = unwrap(
  readCautions(textOf("cautions.yaml").text, { file: "cautions.yaml" }),
).cautions;
export const keepApart = unwrap(
  readKeepApart(textOf("keep-apart.yaml").text, { file: "keep-apart.yaml" }),
).keepApart;
export const cautionNames = cautions.map(({ name }) => name);

function readCoats(texts: readonly TextFile[]): Record<string, Coat> {
  const coats = texts.map(({ file, text }) => unwrap(readCoat(text, { file, cautions: cautionNames })).coat);
  return Object.fromEntries(coats.map((coat) => [coat.name, coat]));
}

export const coats = readCoats(coatTexts);

export const processes = processTexts.map(
  ({ file, text }) => unwrap(readProcess(text, { file, coats, cautions: cautionNames })).definition,
);

const weekTexts = textsIn(join(import.meta.dirname, "../fixtures/a-week"));

/** The process of the made-up week, with its coats. */
export function readWalker() {
  const weekCoats = readCoats(weekTexts.filter(({ text }) => /^coat:/m.test(text)));
  const walker = weekTexts.find(({ file }) => file === "walker.yaml");
  if (walker === undefined) throw new Error("the fixture has no walker.yaml");
  return unwrap(readProcess(walker.text, { file: walker.file, coats: weekCoats, cautions: cautionNames }))
    .definition;
}

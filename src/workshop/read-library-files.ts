import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { Coat } from "../process/coat.ts";
import { hashProcess } from "../process/hash.ts";
import type { Problem } from "../process/problem.ts";
import { sayProblem } from "../process/problem.ts";
import { readCoat } from "../process/read-coat.ts";
import { readProcess } from "../process/read-process.ts";
import { readCautions, readKeepApart } from "../process/read-rules.ts";
import type { Caution, KeepApart } from "../safety/rules.ts";
import type { Library, LibraryCoat, LibraryProcess } from "./library.ts";

/** Paths of the files of both folders. */
export interface LibraryFiles {
  readonly shipped: readonly string[];
  readonly own: readonly string[];
}

/**
 * Reads and checks every file: cautions, then coats, then the processes that name them. The maker's own file takes the place
 * of a shipped one of the same name. A file that is wrong is left out and its problems told.
 */
export function readLibraryFiles(files: LibraryFiles): Library {
  const problems: string[] = [];
  const coats = new Map<string, LibraryCoat>();
  const processes = new Map<string, LibraryProcess>();
  const cautions: Record<string, Caution> = {};
  const keepApart: KeepApart[] = [];
  const tell = (found: readonly Problem[]) => problems.push(...found.map(sayProblem));
  const all = [
    ...files.shipped.map((file) => ({ file, shipped: true })),
    ...files.own.map((file) => ({ file, shipped: false })),
  ].flatMap((entry) => {
    const read = readText(entry.file);
    if ("text" in read) return [{ ...entry, text: read.text }];
    problems.push(read.problem);
    return [];
  });

  for (const { file, text } of all.filter(({ file }) => isNamed(file, "cautions"))) {
    const read = readCautions(text, { file });
    if ("problems" in read) tell(read.problems);
    else for (const caution of read.cautions) cautions[caution.name] = caution;
  }
  const names = Object.keys(cautions);
  for (const { file, text, shipped } of all.filter(({ file }) => isCoatFile(file))) {
    const read = readCoat(text, { file, cautions: names });
    if ("problems" in read) tell(read.problems);
    else coats.set(read.coat.name, { coat: read.coat, file, shipped });
  }
  for (const { file, text } of all.filter(({ file }) => isNamed(file, "keep-apart"))) {
    const read = readKeepApart(text, { file });
    if ("problems" in read) tell(read.problems);
    else keepApart.push(...read.keepApart);
  }
  const known: Record<string, Coat> = Object.fromEntries([...coats].map(([name, { coat }]) => [name, coat]));
  for (const { file, text, shipped } of all.filter(({ file }) => isProcessFile(file))) {
    const read = readProcess(text, { file, coats: known, cautions: names });
    if ("problems" in read) tell(read.problems);
    else {
      const { definition } = read;
      const { name } = definition;
      processes.set(name, { name, definition, hash: hashProcess(definition), file, shipped });
    }
  }
  return {
    processes: [...processes.values()],
    coats: [...coats.values()],
    rules: { keepApart, cautions },
    problems,
  };
}

/** A folder of that name, a link that leads nowhere or a file of somebody else's is told like any other wrong file. */
function readText(file: string): { readonly text: string } | { readonly problem: string } {
  try {
    return { text: readFileSync(file, "utf8") };
  } catch (trouble) {
    return { problem: `${file} cannot be read (${(trouble as NodeJS.ErrnoException).code ?? "unknown"})` };
  }
}

function isCoatFile(file: string): boolean {
  return /[\\/]coats[\\/][^\\/]+$/.test(file);
}

function isNamed(file: string, name: string): boolean {
  return !isCoatFile(file) && basename(file).replace(/\.ya?ml$/, "") === name;
}

function isProcessFile(file: string): boolean {
  return !isCoatFile(file) && !isNamed(file, "cautions") && !isNamed(file, "keep-apart");
}

import { join } from "node:path";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { SafetyRules } from "../safety/rules.ts";
import { cached } from "./cache.ts";
import { stampOf, yamlFiles } from "./stamp.ts";

/** Everything the process folders hold, read and checked: the shipped folder and the maker's own beside it. */
export interface Library {
  readonly processes: readonly LibraryProcess[];
  readonly coats: readonly LibraryCoat[];
  readonly rules: SafetyRules;
  /** Files that could not be used, one sentence a problem. */
  readonly problems: readonly string[];
}

export interface LibraryProcess {
  /** That of its definition. */
  readonly name: string;
  readonly definition: ProcessDefinition;
  readonly hash: ProcessHash;
  readonly file: string;
  /** It came with dryline; the maker's own file of the same name takes its place. */
  readonly shipped: boolean;
}

export interface LibraryCoat {
  readonly coat: Coat;
  readonly file: string;
  readonly shipped: boolean;
}

/** Where the files are. */
export interface LibraryFolders {
  readonly shipped: string;
  readonly own: string;
  readonly cache: string;
}

/** Where a maker's own process files lie, beside the journal. */
export function ownProcesses(dataFolder: string): string {
  return join(dataFolder, "processes");
}

/** The library of some folders, for one program that asks for it again and again. */
export class LibraryOnDisk {
  readonly #folders: LibraryFolders;
  #last: { readonly stamp: string; readonly read: Library } | null = null;

  constructor(folders: LibraryFolders) {
    this.#folders = folders;
  }

  /**
   * As it was read last, or from the cache, unless a file was added, taken away or changed: YAML and its checks stay out
   * of everyday starts.
   */
  async read(): Promise<Library> {
    const { shipped, own, cache } = this.#folders;
    const files = { shipped: yamlFiles(shipped), own: yamlFiles(own) };
    const stamp = stampOf([...files.shipped, ...files.own]);
    if (this.#last?.stamp === stamp) return this.#last.read;
    const kept = await cached(cache, "library", `2\n${stamp}`, async () => {
      const { readLibraryFiles } = await import("./read-library-files.ts");
      return keep(readLibraryFiles(files));
    });
    const library = asKept(kept);
    this.#last = { stamp, read: library };
    return library;
  }
}

/** As it stands in the cache: its larger parts are texts of their own, since an everyday start asks for one process alone. */
interface KeptLibrary {
  readonly processes: readonly (Omit<LibraryProcess, "definition"> & { readonly definition: string })[];
  readonly coats: string;
  readonly rules: SafetyRules;
  readonly problems: readonly string[];
}

function keep({ processes, coats, rules, problems }: Library): KeptLibrary {
  return {
    processes: processes.map((process) => ({ ...process, definition: JSON.stringify(process.definition) })),
    coats: JSON.stringify(coats),
    rules,
    problems,
  };
}

/** The library again, each larger part made of its text when it is first asked for. */
function asKept({ processes, coats, rules, problems }: KeptLibrary): Library {
  const coatsOf = whenAsked<Library["coats"]>(coats);
  return {
    processes: processes.map(({ definition, ...process }) => {
      const definitionOf = whenAsked<ProcessDefinition>(definition);
      return {
        ...process,
        get definition() {
          return definitionOf();
        },
      };
    }),
    get coats() {
      return coatsOf();
    },
    rules,
    problems,
  };
}

function whenAsked<Part extends object>(text: string): () => Part {
  let made: Part | null = null;
  return () => {
    made ??= JSON.parse(text) as Part;
    return made;
  };
}

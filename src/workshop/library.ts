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
    const library = await cached(cache, "library", `1\n${stamp}`, async () => {
      const { readLibraryFiles } = await import("./read-library-files.ts");
      return readLibraryFiles(files);
    });
    this.#last = { stamp, read: library };
    return library;
  }
}

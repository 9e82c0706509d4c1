import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/** Paths of the YAML files of a folder and its `coats` folder, sorted; a missing folder has none. */
export function yamlFiles(folder: string): readonly string[] {
  return [folder, join(folder, "coats")].flatMap((place) => {
    try {
      return readdirSync(place)
        .filter((name) => /\.ya?ml$/.test(name))
        .sort()
        .map((name) => join(place, name));
    } catch {
      return [];
    }
  });
}

/**
 * Changes when a file is added, taken away or written: path, size and time of last change of each; of a link that leads
 * nowhere its path alone.
 */
export function stampOf(files: readonly string[]): string {
  return files
    .map((file) => {
      const found = statSync(file, { throwIfNoEntry: false });
      return found === undefined ? file : `${file} ${found.size} ${found.mtimeMs}`;
    })
    .join("\n");
}

import { existsSync } from "node:fs";
import { dirname, join } from "node:path";

/**
 * The folder the program was installed in: it holds package.json, processes/ and dist/. The same from the sources,
 * from the bundle and from a global install, however deep this code was put.
 *
 * @returns an absolute path
 * @throws when no folder above this code holds a package.json: a broken install
 */
export function findPackageRoot(): string {
  let folder = import.meta.dirname;
  while (!existsSync(join(folder, "package.json"))) {
    const above = dirname(folder);
    if (above === folder) throw new Error(`no package.json above ${import.meta.dirname}`);
    folder = above;
  }
  return folder;
}

import { readFileSync } from "node:fs";
import { SourceMap } from "node:module";
import { fileURLToPath } from "node:url";

/**
 * A stack with its places as the sources have them: a bundle's own lines and names mean nothing to whoever is to mend it.
 * A place whose bundle has no map beside it stays as it is.
 *
 * @example placesBySources("at a (/dryline/dist/main-1.cjs:3:14)") // "at a (../src/plan/at.ts:9:11)"
 */
export function placesBySources(stack: string): string {
  const maps = new Map<string, SourceMap | null>();
  return stack.replaceAll(
    /((?:file:\/\/)?\/[^\s():]+\.[cm]js):(\d+):(\d+)/g,
    (place: string, file: string, line: string, column: string) => {
      const map = maps.get(file) ?? readMap(file);
      maps.set(file, map);
      const source = map?.findEntry(Number(line) - 1, Number(column) - 1);
      if (source === undefined || !("originalSource" in source)) return place;
      return `${source.originalSource}:${source.originalLine + 1}:${source.originalColumn + 1}`;
    },
  );
}

function readMap(file: string): SourceMap | null {
  try {
    const path = file.startsWith("file:") ? fileURLToPath(file) : file;
    return new SourceMap(JSON.parse(readFileSync(`${path}.map`, "utf8")));
  } catch {
    return null;
  }
}

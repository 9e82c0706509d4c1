import { readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { expect, test } from "vitest";
import { readImports } from "../rooms/read-source.ts";

const sourceFolder = join(import.meta.dirname, "../../src");

/** Every module that a file of src/ brings along, at once or through others; its dynamic imports count, too. */
function bringsAlong(file: string, seen = new Set<string>()): Set<string> {
  for (const { text } of readImports(file, readFileSync(join(sourceFolder, file), "utf8"))) {
    const target = text.startsWith(".") ? posix.join(posix.dirname(file), text) : text;
    if (seen.has(target)) continue;
    seen.add(target);
    if (text.startsWith(".")) bringsAlong(target, seen);
  }
  return seen;
}

// These are read at every start, where zod costs 4 to 17 ms and yaml 10.
test.each(["coat.ts", "step.ts", "definition.ts", "hazard.ts", "order.ts", "hash.ts"])(
  "process/%s needs no library",
  (file) => {
    const libraries = [...bringsAlong(`process/${file}`)].filter(
      (name) => !name.endsWith(".ts") && !name.startsWith("node:"),
    );
    expect(libraries).toEqual([]);
  },
);

test("the same look does find them where files are read", () => {
  expect([...bringsAlong("process/read-process.ts")]).toEqual(expect.arrayContaining(["zod/mini", "yaml"]));
});

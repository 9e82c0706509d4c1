import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { transformSync } from "esbuild";
import { afterEach, beforeEach, expect, test } from "vitest";
import { placesBySources } from "../../src/commands/by-sources.ts";

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-by-sources-"));
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("a place in a bundle is told as the source has it, one without a map as it stands", () => {
  // The throw stands in line 3, from its fifth letter on; minified, all is one line.
  const source =
    "export function weigh(grams: number): number {\n  if (grams < 0) {\n    throw new Error();\n  }\n  return grams;\n}\n";
  const { code, map } = transformSync(source, {
    loader: "ts",
    minify: true,
    sourcemap: true,
    sourcefile: "src/weigh.ts",
  });
  const bundle = join(folder, "main.cjs");
  writeFileSync(bundle, code);
  writeFileSync(`${bundle}.map`, map);
  const column = code.indexOf("throw") + 1;
  const other = join(folder, "other.cjs:7:9");
  expect(
    placesBySources(
      `Error\n    at a (${bundle}:1:${column})\n    at file://${bundle}:1:${column}\n    at ${other}`,
    ),
  ).toBe(`Error\n    at a (src/weigh.ts:3:5)\n    at src/weigh.ts:3:5\n    at ${other}`);
});

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { builtCommand, builtFolder } from "../src/fresh.mjs";

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-cold-"));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

// On top of the 50 ms of a bare Node 20, trial programs took for Ink 71 ms, conf 23, zod 17, yaml 10; and the first use
// of a time zone by Intl, which @date-fns/tz is built on, 10 to 24.
const heavy = /\/node_modules\/(zod|yaml|conf|ajv|ink|react|yoga-layout|@date-fns)\//;

test.each([{ words: ["--version"] }, { words: ["now"] }, { words: [] }, { words: ["week"] }])(
  "dryline $words with pieces out loads none of the heavy libraries",
  ({ words }) => {
    // The very first start reads the process files and the time-zone database, and keeps what they say in its cache.
    run(["tag", "carved walker", "--count", "3"]);
    run(["now"]);
    const loaded = readLoadedSources(words);
    // main.ts itself must be seen, or nothing was looked at.
    expect(loaded).toContainEqual(expect.stringMatching(/\/src\/main\.ts$/));
    expect(loaded.filter((source) => heavy.test(source))).toEqual([]);
  },
);

/** Runs the built program and names every source inside the bundles that it loaded, by their source maps. */
function readLoadedSources(words: string[]): string[] {
  const coverage = join(folder, "coverage");
  // Node's coverage names every script that ran, whichever of its two module loaders brought it.
  run(words, { NODE_V8_COVERAGE: coverage });
  return (
    readdirSync(coverage)
      .flatMap((file) => readJson<{ result: { url: string }[] }>(join(coverage, file)).result)
      // By name alone: compiled code says where it was made, which for a copied folder is not where it runs.
      .map(({ url }) => join(builtFolder, `${basename(url)}.map`))
      .filter((map) => existsSync(map))
      .flatMap((map) => readJson<{ sources: string[] }>(map).sources)
      .map((source) => join(builtFolder, source))
  );
}

/** Runs the built program on the scratch folder; it must be done without a word of trouble. */
function run(words: string[], env: Record<string, string> = {}): void {
  const { status, stderr } = spawnSync(process.execPath, [builtCommand, ...words], {
    encoding: "utf8",
    env: { ...process.env, DRYLINE_HOME: join(folder, "home"), ...env },
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
}

function readJson<Shape>(file: string): Shape {
  return JSON.parse(readFileSync(file, "utf8"));
}

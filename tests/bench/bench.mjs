/**
 * `npm run bench` runs every tests/bench/NAME.bench.ts; `npm run bench -- cold` only those named.
 * A benchmark exports `measure()`, which gives the rows of its table; ratios to a baseline in the same run are what counts.
 * It may take words of its own: `npm run bench -- plan FILE --ms 500`. One that runs the built program exports `runsBuilt`.
 */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import * as esbuild from "esbuild";
import { ensureBuilt, packageRoot } from "../../src/fresh.mjs";
import { driver } from "../../src/journal/driver.mjs";

/**
 * @typedef {import("./compare-runs.ts").Row} Row
 * @typedef {{ measure: (words: string[]) => Row[] | Promise<Row[]>, runsBuilt?: boolean }} Benchmark
 */

const suffix = ".bench.ts";

/** Below node_modules, so that the bundled benchmark finds the packages it imports. */
const bundled = join(packageRoot, "node_modules/.cache/dryline-bench");

const all = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(suffix))
  .map((file) => file.slice(0, -suffix.length));

/**
 * Words from the first that names no benchmark on belong to the benchmark named before them.
 *
 * @param {string[]} words names of benchmarks, none: all; then what the last of them is asked
 */
async function runBenchmarks(words) {
  const names = words.findIndex((word) => !all.includes(word));
  const wanted = names < 0 ? words : words.slice(0, names);
  const asked = names < 0 ? [] : words.slice(names);
  if (wanted.length === 0 && asked.length > 0) {
    console.error(`no benchmark ${asked[0]}; there are: ${all.join(", ")}`);
    process.exitCode = 2;
    return;
  }
  for (const name of wanted.length > 0 ? wanted : all) {
    const { measure, runsBuilt } = await loadBenchmark(name);
    const refusal = runsBuilt ? await ensureBuilt() : undefined;
    if (refusal !== undefined) {
      console.error(refusal);
      process.exitCode = 2;
      return;
    }
    // Asked something, a benchmark prints its own answer and nothing else.
    if (asked.length === 0) console.log(`\n${name}`);
    for (const row of await measure(asked)) console.log(formatRow(row));
  }
}

/**
 * @param {Row} row
 * @returns {string} such as "  dryline --version      61.7 ms    1.08x"
 */
function formatRow({ name, value, unit, ratio }) {
  const compared = ratio === null ? "" : `${ratio.toFixed(2).padStart(9)}x`;
  return `  ${name.padEnd(50)} ${value.toFixed(1).padStart(12)} ${unit.padEnd(6)}${compared}`;
}

/**
 * @param {string} name
 * @returns {Promise<Benchmark>}
 */
async function loadBenchmark(name) {
  const outfile = join(bundled, `${name}.mjs`);
  await esbuild.build({
    entryPoints: [join(import.meta.dirname, name + suffix)],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    alias: { "better-sqlite3": driver },
    plugins: [keepPlaces, useInkAsBuilt],
  });
  return import(pathToFileURL(outfile).href);
}

/**
 * Lets each TypeScript file still find its own folder once it is bundled, and leaves plain JavaScript where it stands.
 *
 * @type {esbuild.Plugin}
 */
const keepPlaces = {
  name: "keep-places",
  setup(plugin) {
    plugin.onResolve({ filter: /^\..*\.mjs$/ }, ({ path, resolveDir }) => ({
      path: pathToFileURL(join(resolveDir, path)).href,
      external: true,
    }));
    plugin.onLoad({ filter: /\.tsx?$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replaceAll("import.meta.dirname", JSON.stringify(dirname(path))),
      loader: path.endsWith("x") ? "tsx" : "ts",
    }));
  },
};

/** @type {esbuild.Plugin} */
const useInkAsBuilt = {
  name: "use-ink-as-built",
  setup(plugin) {
    plugin.onResolve({ filter: /\/mount-ink\.tsx$/ }, () => ({
      path: join(import.meta.dirname, "ink-as-built.ts"),
    }));
  },
};

await runBenchmarks(process.argv.slice(2));

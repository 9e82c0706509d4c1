/**
 * `npm run bench` runs every tests/bench/NAME.bench.ts; `npm run bench -- cold` only those named.
 * A benchmark exports `measure()`, which gives the rows of its table; ratios to a baseline in the same run are what counts.
 */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import * as esbuild from "esbuild";
import { ensureBuilt, packageRoot } from "../../src/fresh.mjs";

const suffix = ".bench.ts";

/** Below node_modules, so that the bundled benchmark finds the packages it imports. */
const bundled = join(packageRoot, "node_modules/.cache/dryline-bench");

const all = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(suffix))
  .map((file) => file.slice(0, -suffix.length));

/** @param {string[]} wanted names of benchmarks; none: all */
async function runBenchmarks(wanted) {
  const unknown = wanted.filter((name) => !all.includes(name));
  const refusal =
    unknown.length > 0
      ? `no benchmark ${unknown.join(", ")}; there are: ${all.join(", ")}`
      : await ensureBuilt();
  if (refusal !== undefined) {
    console.error(refusal);
    process.exitCode = 2;
    return;
  }
  for (const name of wanted.length > 0 ? wanted : all) {
    const { measure } = await loadBenchmark(name);
    console.log(`\n${name}`);
    for (const row of await measure()) console.log(formatRow(row));
  }
}

/**
 * @param {import("./compare-runs.ts").Row} row
 * @returns {string} such as "  dryline --version      61.7 ms    1.08x"
 */
function formatRow({ name, value, unit, ratio }) {
  const compared = ratio === null ? "" : `${ratio.toFixed(2).padStart(9)}x`;
  return `  ${name.padEnd(50)} ${value.toFixed(1).padStart(12)} ${unit.padEnd(6)}${compared}`;
}

/**
 * @param {string} name
 * @returns {Promise<{ measure: () => import("./compare-runs.ts").Row[] | Promise<import("./compare-runs.ts").Row[]> }>}
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
    plugins: [keepPlaces],
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

await runBenchmarks(process.argv.slice(2));

/**
 * Bundles src/ into dist/. Run by `npm run build`, and by src/fresh.mjs when dist/ is stale.
 *
 * Bundles, for the sake of a fast start: loading many small files, or ES modules, costs more.
 *
 * - `dryline.cjs` from main.ts: CommonJS, which starts faster than ES modules. Every dynamic `import("./x.ts")`
 *   in the sources becomes a chunk that is loaded only when that line is reached, so heavy libraries
 *   (zod, yaml, conf) belong in files reached that way. Modules shared by chunks exist once.
 * - `dashboard.mjs`: Ink waits at its top level and so must be an ES module; main.ts reaches it by a dynamic import too.
 *
 * - `plan-worker.cjs`: the thread that searches for plans while the dashboard is open.
 *
 * They do not share modules: each has its own copy of what they have in common. So no module under src/ may keep
 * changing state at its top level.
 */
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import * as esbuild from "esbuild";
import { builtFolder, fingerprintSources, packageRoot, stampFile } from "./fresh.mjs";

/** A program started before a rebuild may still want a chunk of its own build: old ones stay this long. */
const keepOldChunksMilliseconds = 60 * 60 * 1000;

/** @satisfies {esbuild.BuildOptions & { write: false }} */
const common = {
  absWorkingDir: packageRoot,
  outdir: builtFolder,
  bundle: true,
  write: false,
  platform: "node",
  target: "node20",
  chunkNames: "[name]-[hash]",
  // Native code cannot be bundled.
  external: ["better-sqlite3"],
  // React's development build keeps a performance entry for every render, for ever.
  define: { "process.env.NODE_ENV": '"production"' },
  sourcesContent: false,
  logLevel: "warning",
};

/**
 * Leaves the dashboard out of the command's bundle and points to the bundle of its own.
 *
 * @param {Set<string>} entries filled with the source files of the dashboard that main.ts reaches
 * @returns {esbuild.Plugin}
 */
function keepDashboardApart(entries) {
  return {
    name: "keep-dashboard-apart",
    setup(plugin) {
      plugin.onResolve({ filter: /^\.\/dashboard\// }, ({ kind, path, resolveDir }) => {
        if (kind !== "dynamic-import")
          return { errors: [{ text: "reach the dashboard by a dynamic import" }] };
        entries.add(join(resolveDir, path));
        return { path: "./dashboard.mjs", external: true };
      });
    },
  };
}

/** Ink asks for React's developer tools only when told to debug; they are not installed. */
const withoutDeveloperTools = {
  name: "without-developer-tools",
  /** @param {esbuild.PluginBuild} plugin */
  setup(plugin) {
    plugin.onResolve({ filter: /^react-devtools-core$/ }, ({ path }) => ({ path, namespace: "absent" }));
    plugin.onLoad({ filter: /.*/, namespace: "absent" }, () => ({ contents: "export default {};" }));
  },
};

/**
 * The bundler splits code into chunks only for ES modules, so the command is split as such and each chunk then turned
 * into CommonJS by itself. Source maps lead through both steps.
 *
 * @param {Set<string>} dashboardEntries filled with the source files of the dashboard that main.ts reaches
 * @returns {Promise<Map<string, string>>} file name in dist/ to its text
 */
async function bundleCommand(dashboardEntries) {
  const split = await esbuild.build({
    ...common,
    entryPoints: { dryline: join(packageRoot, "src/main.ts") },
    format: "esm",
    splitting: true,
    sourcemap: "inline",
    outExtension: { ".js": ".cjs" },
    plugins: [keepDashboardApart(dashboardEntries)],
  });
  const files = new Map();
  for (const chunk of split.outputFiles) {
    const name = basename(chunk.path);
    const { code, map } = await esbuild.transform(chunk.text, {
      format: "cjs",
      platform: "node",
      target: "node20",
      define: { "import.meta.dirname": "__dirname", "import.meta.filename": "__filename" },
      logOverride: { "empty-import-meta": "error" },
      logLevel: "warning",
      sourcefile: name,
      sourcemap: "external",
      sourcesContent: false,
      banner: name === "dryline.cjs" ? '#!/usr/bin/env node\n"use strict";' : '"use strict";',
    });
    // `import()` of a chunk would wake Node's ES module loader, which costs several milliseconds; `require` does not.
    const requiring = code.replace(
      /\bimport\(("\.\/[^"]+\.cjs")\)/g,
      "Promise.resolve().then(() => require($1))",
    );
    files.set(name, `${requiring}//# sourceMappingURL=${name}.map\n`);
    files.set(`${name}.map`, map);
  }
  return files;
}

/**
 * @param {string} entry the source file of the dashboard that main.ts reaches
 * @returns {Promise<Map<string, string>>} file name in dist/ to its text
 */
async function bundleDashboard(entry) {
  const built = await esbuild.build({
    ...common,
    entryPoints: { dashboard: entry },
    format: "esm",
    splitting: true,
    sourcemap: "linked",
    outExtension: { ".js": ".mjs" },
    plugins: [withoutDeveloperTools],
    // Ink's layout engine would fetch its own bytes from a data URL, which loads Node's whole HTTP client (40 ms);
    // where there is no fetch it decodes them.
    define: { ...common.define, fetch: "undefined" },
    // CommonJS libraries inside ask for Node's own modules by `require`.
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
  });
  return new Map(built.outputFiles.map((file) => [basename(file.path), file.text]));
}

/** @returns {Promise<Map<string, string>>} file name in dist/ to its text */
async function bundlePlanner() {
  const built = await esbuild.build({
    ...common,
    entryPoints: { "plan-worker": join(packageRoot, "src/workshop/plan-worker.ts") },
    format: "cjs",
    sourcemap: "linked",
    outExtension: { ".js": ".cjs" },
  });
  return new Map(built.outputFiles.map((file) => [basename(file.path), file.text]));
}

/**
 * Puts each file in place whole, by a rename: another program may be reading it.
 *
 * @param {Map<string, string>} files file name in dist/ to its text
 * @param {string} stamp the fingerprint of the sources
 */
function writeBuilt(files, stamp) {
  mkdirSync(builtFolder, { recursive: true });
  rmSync(stampFile, { force: true });
  for (const [name, text] of [...files, /** @type {const} */ ([basename(stampFile), stamp])]) {
    const unfinished = join(builtFolder, `.${name}.${process.pid}`);
    writeFileSync(unfinished, text, { mode: name === "dryline.cjs" ? 0o755 : 0o644 });
    renameSync(unfinished, join(builtFolder, name));
  }
}

/** @param {Map<string, string>} files what this build made: everything else in dist/ is of an earlier one */
function clearOldChunks(files) {
  for (const name of readdirSync(builtFolder)) {
    const file = join(builtFolder, name);
    if (files.has(name) || file === stampFile) continue;
    if (Date.now() - statSync(file).mtimeMs > keepOldChunksMilliseconds) rmSync(file, { force: true });
  }
}

/** Makes dist/ anew. Throws when a source has an error (the bundler has printed it) or dist/ cannot be written. */
export async function build() {
  // Taken first: a source that changes while we build leaves dist/ stale.
  const stamp = fingerprintSources();
  /** @type {Set<string>} */
  const dashboardEntries = new Set();
  const files = await bundleCommand(dashboardEntries);
  for (const entry of dashboardEntries) {
    for (const [name, text] of await bundleDashboard(entry)) files.set(name, text);
  }
  for (const [name, text] of await bundlePlanner()) files.set(name, text);
  writeBuilt(files, stamp);
  clearOldChunks(files);
  await esbuild.stop();
}

if (process.argv[1] === import.meta.filename) await build();

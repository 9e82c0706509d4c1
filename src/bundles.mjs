/**
 * The bundles of dist/, for the sake of a fast start: loading many small files, or ES modules, costs more.
 *
 * - `now-HASH.cjs`, `commands-HASH.cjs` and `dashboard-HASH.cjs`: main.ts and all of ours it can reach, in one CommonJS file;
 *   but for what others of them need (programs.mjs), which is up to half. A dynamic `import("./x.ts")` runs that file of ours
 *   when its line is reached.
 * - A dynamic import that leads to a library (zod, yaml, conf), or to what is large and seldom run, is a bundle apart,
 *   loaded when its line is reached.
 * - Ink waits at its top level, so what leads to it must be an ES module.
 * - `NAME-worker.cjs`: each source of that name is a thread's own program.
 * - `dryline.cjs`: the launcher, which chooses among the three.
 *
 * They do not share modules: each has its own copy of what they have in common. So no module under src/ may keep
 * changing state at its top level, nor ask across them whether a thing is of its class.
 */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import * as esbuild from "esbuild";
import { findApart } from "./find-apart.mjs";
import { builtFolder, packageRoot } from "./fresh.mjs";
import { driver, newerDriver } from "./journal/driver.mjs";
import { heldBy, programNames } from "./programs.mjs";
import { inAscii } from "./workshop/in-ascii.mjs";

/** @satisfies {esbuild.BuildOptions} */
const common = {
  absWorkingDir: packageRoot,
  outdir: builtFolder,
  bundle: true,
  platform: "node",
  target: "node20",
  entryNames: "[name]-[hash]",
  sourcemap: "linked",
  sourcesContent: false,
  // Half as much to read, and less compiled code to take up: 3 ms of each start. Lines stay short enough for an error that
  // shows one; a fault report finds the names in the sources again (commands/by-sources.ts).
  minifyWhitespace: true,
  minifySyntax: true,
  minifyIdentifiers: true,
  lineLimit: 160,
  alias: { "better-sqlite3": driver },
  // The newer driver finds its native part beside its own files; how the older looks for it, where it is not in its usual place.
  external: [newerDriver, "bindings"],
  // React's development build keeps a performance entry for every render, for ever.
  define: { "process.env.NODE_ENV": '"production"' },
  logLevel: "warning",
};

/** A file of ours in CommonJS finds its place by other names. */
/** @satisfies {esbuild.BuildOptions} */
const commonJs = {
  format: "cjs",
  outExtension: { ".js": ".cjs" },
  define: {
    ...common.define,
    "import.meta.dirname": "__dirname",
    "import.meta.filename": "__filename",
  },
  logOverride: { "empty-import-meta": "error" },
};

/** Ink asks for React's developer tools only when told to debug; they are not installed. */
const withoutDeveloperTools = {
  name: "without-developer-tools",
  /** @param {esbuild.PluginBuild} plugin */
  setup(plugin) {
    plugin.onResolve({ filter: /^\.\/devtools\.js$/ }, ({ path }) => ({ path, namespace: "absent" }));
    plugin.onLoad({ filter: /.*/, namespace: "absent" }, () => ({ contents: "export default {};" }));
  },
};

/**
 * Changes of ours to the libraries under Ink, as they are bundled. They leave what is drawn as it was; together they take
 * away most of the work of a frame.
 *
 * @type {readonly { file: RegExp, changes: readonly (readonly [was: string, is: string])[] }[]}
 */
const quickened = [
  {
    // The style of each character is told apart from that of the one before it by sets made for the purpose. Nearly always
    // the styles are the same.
    file: /ansi-tokenize[\\/]build[\\/]diff\.js$/,
    changes: [
      [
        "export function diffAnsiCodes(from, to) {",
        `export function diffAnsiCodes(from, to) {
          if (from.length === to.length && from.every((code, place) => code === to[place])) return [];`,
      ],
    ],
  },
  {
    // Each line is taken apart into its characters and put together again in each frame. Nearly all lines are those of the
    // frame before.
    file: /ink[\\/]build[\\/]output\.js$/,
    changes: [
      ["    caches = new OutputCaches();", "    caches = cachesAfter();"],
      [
        "cached = styledCharsFromTokens(tokenize(line));",
        "cached = before.styledChars.get(line) ?? styledCharsFromTokens(tokenize(line));",
      ],
      ["cached = stringWidth(text);", "cached = before.widths.get(text) ?? stringWidth(text);"],
      ["    styledChars = new Map();", "    styledChars = new Map(); rows = [];"],
      ["const row = [];", "const row = Array(this.width).fill(blank);"],
      ["for (let x = 0; x < this.width; x++) {", "for (let x = row.length; x < this.width; x++) {"],
      [".map(line => {\n            // See", ".map((line, y) => {\n            // See"],
      [
        "return styledCharsToString(lineWithoutEmptyItems).trimEnd();",
        `const was = before.rows[y];
        const isSame = was?.chars.length === line.length && line.every((char, x) => char === was.chars[x]);
        const text = isSame ? was.text : styledCharsToString(lineWithoutEmptyItems).trimEnd();
        this.caches.rows[y] = { chars: line, text };
        return text;`,
      ],
      [
        "export default class Output {",
        `const blank = { type: "char", value: " ", fullWidth: false, styles: [] };
        let before = new OutputCaches(), latest = before;
        const cachesAfter = () => { before = latest; return latest = new OutputCaches(); };
        export default class Output {`,
      ],
    ],
  },
];

/** @type {esbuild.Plugin} */
const quicken = {
  name: "quicken",
  setup(plugin) {
    for (const { file, changes } of quickened) {
      plugin.onLoad({ filter: file }, ({ path }) => ({
        contents: changes.reduce(
          (text, [was, is]) => {
            if (!text.includes(was)) throw new Error(`${path} has changed: it no longer holds "${was}"`);
            return text.replace(was, is);
          },
          readFileSync(path, "utf8"),
        ),
      }));
    }
  },
};

/** @type {esbuild.BuildOptions} */
const inkModule = {
  format: "esm",
  outExtension: { ".js": ".mjs" },
  plugins: [withoutDeveloperTools, quicken],
  // Ink's layout engine would fetch its own bytes from a data URL, which loads Node's whole HTTP client (40 ms);
  // where there is no fetch it decodes them.
  define: { ...common.define, fetch: "undefined" },
  // CommonJS libraries inside ask for Node's own modules by `require`.
  banner: {
    js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
  },
};

/** @typedef {Map<string, string>} Files file name in dist/ to its text */

/** @typedef {{ files: Files, names: Map<string, string> }} Bundles `names`: file name in dist/ of each source's bundle */

/** @returns {Promise<{ files: Files, programs: string[] }>} all that dist/ holds, and the file names of the programs */
export async function bundleAll() {
  const { scripts, modules, held } = await findApart({ ...common, plugins: [withoutDeveloperTools] });
  const libraries = together([await bundle(scripts, commonJs), await bundle(modules, inkModule)]);
  const apart = together([
    libraries,
    await bundle(held, { ...commonJs, plugins: [reachApart(libraries.names)] }),
  ]);
  const bundles = await Promise.all(programNames.map((program) => bundleProgram(program, apart.names)));
  const programs = bundles.flatMap(({ names }) => [...names.values()]);
  const workers = await bundle(sourcesOfWorkers(), { ...commonJs, entryNames: "[name]" });
  const launcher = await bundle([join(packageRoot, "src/launch.mjs")], {
    ...commonJs,
    entryNames: "dryline",
    define: {
      ...commonJs.define,
      ...Object.fromEntries(
        programNames.map((program, index) => [
          `process.env.DRYLINE_${program.toUpperCase()}`,
          JSON.stringify(programs[index]),
        ]),
      ),
    },
    banner: { js: '#!/usr/bin/env node\n"use strict";' },
  });
  return { files: together([apart, ...bundles, workers, launcher]).files, programs };
}

/**
 * @param {import("./programs.mjs").Program} program
 * @param {Map<string, string>} apart file name in dist/ of each source's bundle apart
 * @returns {Promise<Bundles>}
 */
async function bundleProgram(program, apart) {
  const own = heldBy(program);
  const { files, names } = await bundle([join(packageRoot, "src/main.ts")], {
    ...commonJs,
    entryNames: `${program}-[hash]`,
    // Else this would be put around the text at each start, and it is a long one.
    banner: { js: "(function (exports, require, module, __filename, __dirname) {" },
    footer: { js: "})" },
    plugins: [reachApart(new Map([...apart].filter(([source]) => !own.includes(source))))],
  });
  // The bundler writes all but regular expressions so.
  for (const name of names.values()) files.set(name, inAscii(reachAsLoaded(files.get(name) ?? "")));
  return { files, names };
}

/**
 * @param {readonly Bundles[]} bundles
 * @returns {Bundles}
 */
function together(bundles) {
  return {
    files: new Map(bundles.flatMap(({ files }) => [...files])),
    names: new Map(bundles.flatMap(({ names }) => [...names])),
  };
}

/**
 * @param {readonly string[]} sources paths of the files to begin from
 * @param {esbuild.BuildOptions} options
 * @returns {Promise<Bundles>}
 */
async function bundle(sources, options) {
  /** @type {esbuild.BuildOptions & { metafile: true, write: false }} */
  const wanted = { ...common, ...options, entryPoints: [...sources], metafile: true, write: false };
  const { outputFiles, metafile } = await esbuild.build(wanted);
  const names = Object.entries(metafile.outputs).flatMap(([output, { entryPoint }]) =>
    entryPoint === undefined
      ? []
      : [/** @type {const} */ ([join(packageRoot, entryPoint), basename(output)])],
  );
  return {
    files: new Map(outputFiles.map(({ path, text }) => [basename(path), text])),
    names: new Map(names),
  };
}

/**
 * `import()` of a script would wake Node's loader of ES modules, which costs several milliseconds; `require` does not.
 * Nor does `import()` work in the program: see load-program.mjs.
 *
 * @param {string} text
 * @returns {string}
 */
function reachAsLoaded(text) {
  return text
    .replace(/\bimport\(("node:[^"]+"|"\.\/[^"]+\.cjs")\)/g, "Promise.resolve().then(() => require($1))")
    .replace(/\bimport\(("\.\/[^"]+\.mjs")\)/g, "module.import($1)");
}

/**
 * Leaves out what is bundled apart, and points to its bundle.
 *
 * @param {Map<string, string>} names file name in dist/ of each source's bundle
 * @returns {esbuild.Plugin}
 */
function reachApart(names) {
  return {
    name: "reach-apart",
    setup(plugin) {
      plugin.onResolve({ filter: /.*/ }, async ({ kind, path, pluginData, ...asked }) => {
        if (kind !== "dynamic-import" || pluginData === names) return undefined;
        const found = await plugin.resolve(path, { kind, ...asked, pluginData: names });
        const name = names.get(found.path);
        return name === undefined ? undefined : { path: `./${name}`, external: true };
      });
    },
  };
}

/** @returns {string[]} */
function sourcesOfWorkers() {
  return readdirSync(join(packageRoot, "src"), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith("-worker.ts"))
    .map((file) => join(packageRoot, "src", file));
}

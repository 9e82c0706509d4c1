/** Finds what is to be bundled apart from the programs: whatever a dynamic import reaches that leads to a library. */
import { join } from "node:path";
import * as esbuild from "esbuild";
import { packageRoot } from "./fresh.mjs";
import { heldBySome } from "./programs.mjs";

/** The one library that every start needs. */
const everyday = "better-sqlite3";

/** Large, and seldom run: every start would read it for nothing. */
const seldom = ["src/commands/rotation.ts"];

/** Waits at its top level. */
const ink = "ink";

/**
 * @param {esbuild.BuildOptions} options how the program is bundled
 * @returns {Promise<{ scripts: string[], modules: string[], held: string[] }>} source files to be bundled apart: as CommonJS,
 *   those that must be ES modules, and those that only some programs hold
 */
export async function findApart(options) {
  const { metafile } = await esbuild.build({
    ...options,
    entryPoints: ["src/main.ts"],
    metafile: true,
    write: false,
    format: "esm",
    splitting: true,
    sourcemap: false,
  });
  const ours = Object.entries(metafile.inputs).filter(([file]) => libraryOf(file) === undefined);
  const reached = [...new Set(ours.flatMap(([, input]) => dynamicImports(input)))];
  const libraries = new Map(reached.map((file) => [file, librariesOf(file, metafile)]));
  const apart = [...libraries].filter(
    ([file, names]) => seldom.includes(file) || names.some((name) => name !== everyday),
  );
  const paths = (/** @type {typeof apart} */ found) => found.map(([file]) => join(packageRoot, file)).sort();
  return {
    scripts: paths(apart.filter(([, names]) => !names.includes(ink))),
    modules: paths(apart.filter(([, names]) => names.includes(ink))),
    held: heldBySome.filter((source) => reached.some((file) => join(packageRoot, file) === source)),
  };
}

/**
 * @param {esbuild.Metafile["inputs"][string]} input
 * @returns {string[]} the files it imports dynamically
 */
function dynamicImports({ imports }) {
  return imports
    .filter(({ kind, external }) => kind === "dynamic-import" && external !== true)
    .map(({ path }) => path);
}

/**
 * @param {string} file
 * @param {esbuild.Metafile} metafile
 * @returns {string[]} the names of the libraries that are loaded with it
 */
function librariesOf(file, { inputs }) {
  const loaded = new Set([file]);
  for (const each of loaded) {
    for (const { kind, path, external } of inputs[each]?.imports ?? []) {
      if (kind !== "dynamic-import" && external !== true) loaded.add(path);
    }
  }
  return [...loaded].flatMap((each) => libraryOf(each) ?? []);
}

/**
 * @param {string} file
 * @returns {string | undefined} the name of the library it is part of; undefined: it is ours
 */
function libraryOf(file) {
  // The packages may be linked from elsewhere: a path may begin with many "../".
  return /.*\bnode_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1];
}

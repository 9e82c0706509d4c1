/**
 * Tells whether the built program in dist/ still matches its sources, and builds it when it does not.
 * Plain JavaScript, as it runs before anything is built; it must not load the bundler while dist/ is fresh.
 */
import { createHash } from "node:crypto";
import { accessSync, constants, existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { compiledCodeOf } from "./load-program.mjs";

export const packageRoot = join(import.meta.dirname, "..");
export const builtFolder = join(packageRoot, "dist");
export const builtCommand = join(builtFolder, "dryline.cjs");

/** File name in dist/: what dist/ was made from. */
export const stampFile = "sources.sha256";

/** @typedef {{ fingerprint: string, programs: string[] }} Stamp of the sources, and the file names of the programs */

/**
 * @param {Stamp} stamp
 * @returns {string} as it stands in the file
 */
export function sayStamp({ fingerprint, programs }) {
  return `${[fingerprint, ...programs].join("  ")}\n`;
}

/**
 * One hash over every file that decides what is built: src/, the lockfile, the manifest, the compiler settings.
 * Contents count, not times: a fresh clone or a copied folder has times that say nothing.
 *
 * @returns {string} 64 hexadecimal digits
 */
export function fingerprintSources() {
  const sources = readdirSync(join(packageRoot, "src"), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(packageRoot, join(entry.parentPath, entry.name)));
  const hash = createHash("sha256");
  for (const file of [...sources, "package.json", "package-lock.json", "tsconfig.json"].sort()) {
    const bytes = readFileSync(join(packageRoot, file));
    hash.update(`${file.split(sep).join("/")} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest("hex");
}

/** @returns {Stamp | undefined} undefined: nothing was built, or not to the end */
function readStamp() {
  try {
    const [fingerprint = "", ...programs] = readFileSync(join(builtFolder, stampFile), "utf8")
      .trim()
      .split("  ");
    return { fingerprint, programs };
  } catch (error) {
    if (codeOf(error) === "ENOENT") return undefined;
    throw error;
  }
}

/**
 * A build made by another Node has no compiled code for this one. Where it cannot be kept, the program runs without.
 *
 * @param {readonly string[]} programs file names in dist/
 */
async function compileForThisNode(programs) {
  const bundles = programs.map((program) => join(builtFolder, program));
  if (bundles.every((bundle) => existsSync(compiledCodeOf(bundle))) || !mayWrite(builtFolder)) return;
  const { compileAhead } = await import("./compile-ahead.mjs");
  compileAhead(bundles);
}

/**
 * Builds when dist/ is missing or stale; writes nothing when it is fresh, so a read-only clone works.
 *
 * @returns {Promise<string | undefined>} why it could not be built, as one sentence; undefined when all is well
 */
export async function ensureBuilt() {
  const stamp = readStamp();
  if (stamp?.fingerprint === fingerprintSources()) {
    await compileForThisNode(stamp.programs);
    return undefined;
  }
  if (!mayWrite(existsSync(builtFolder) ? builtFolder : packageRoot)) {
    return `the built program is missing or out of date, and ${packageRoot} cannot be written: run "npm run build" there as a user who may.`;
  }
  if (!existsSync(join(packageRoot, "node_modules"))) {
    return `its packages are not installed: run "npm ci" in ${packageRoot} first.`;
  }
  const { build } = await import("./build.mjs");
  await build();
  return undefined;
}

/**
 * @param {string} folder
 * @returns {boolean}
 */
function mayWrite(folder) {
  try {
    accessSync(folder, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * @param {unknown} error
 * @returns {string | undefined} the machine-readable code that Node puts on its errors
 */
function codeOf(error) {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : undefined;
}

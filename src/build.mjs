/** Makes dist/ from src/. Run by `npm run build`, and by src/fresh.mjs when dist/ is stale. */
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import * as esbuild from "esbuild";
import { bundleAll } from "./bundles.mjs";
import { compileAhead } from "./compile-ahead.mjs";
import { builtFolder, fingerprintSources, sayStamp, stampFile } from "./fresh.mjs";

/** A program started before a rebuild may still want a bundle of its own build: old ones stay this long. */
const keepOldMilliseconds = 60 * 60 * 1000;

/**
 * Puts a file in place whole, by a rename: another program may be reading it.
 *
 * @param {string} name file name in dist/
 * @param {string} text
 */
function writeWhole(name, text) {
  const unfinished = join(builtFolder, `.${name}.${process.pid}`);
  writeFileSync(unfinished, text, { mode: name === "dryline.cjs" ? 0o755 : 0o644 });
  renameSync(unfinished, join(builtFolder, name));
}

/** @param {Map<string, string>} files what this build made: everything else in dist/ is of an earlier one */
function clearOld(files) {
  for (const name of readdirSync(builtFolder)) {
    if (files.has(name) || name === stampFile) continue;
    const file = join(builtFolder, name);
    if (Date.now() - statSync(file).mtimeMs > keepOldMilliseconds) rmSync(file, { force: true });
  }
}

/** Makes dist/ anew. Throws when a source has an error (the bundler has printed it) or dist/ cannot be written. */
export async function build() {
  // Taken first: a source that changes while we build leaves dist/ stale.
  const fingerprint = fingerprintSources();
  const { files, programs } = await bundleAll();
  mkdirSync(builtFolder, { recursive: true });
  rmSync(join(builtFolder, stampFile), { force: true });
  for (const [name, text] of files) writeWhole(name, text);
  compileAhead(programs.map((program) => join(builtFolder, program)));
  clearOld(files);
  // Last, so that a broken-off build is stale.
  writeWhole(stampFile, sayStamp({ fingerprint, programs }));
  await esbuild.stop();
}

if (process.argv[1] === import.meta.filename) await build();

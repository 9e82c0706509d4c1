/**
 * Runs the program as on any evening and keeps what V8 compiled of it, for the next starts to take up. The build runs
 * this file as a process of its own, as `node warm-up.mjs BUNDLE`, with DRYLINE_HOME a scratch folder.
 */
import { renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { compiledCodeOf, loadProgram } from "./load-program.mjs";

/** What is run: a function that none of these needs is compiled when it is reached. */
const lines = [["hours", "daily 0-24"], ["tag", "carved walker", "--count", "3"], ["now"], ["week"]];

// The program ends itself; here its next line follows.
process.exit = /** @type {typeof process.exit} */ (() => {});

const [, , bundle = ""] = process.argv;
const { script, run } = loadProgram(bundle);
const require = createRequire(bundle);

function runNextLine() {
  const line = lines.shift();
  if (line === undefined) {
    keepCompiledCode();
  } else {
    process.argv = [process.execPath, bundle, ...line];
    run(require);
    // Promises alone do not keep a process alive, nor let it be told again.
    setImmediate(() => {});
  }
}

/** Put in place whole, by a rename: a program that starts meanwhile finds all of it or none. */
function keepCompiledCode() {
  const unfinished = `${compiledCodeOf(bundle)}.${process.pid}`;
  writeFileSync(unfinished, script.createCachedData());
  renameSync(unfinished, compiledCodeOf(bundle));
}

// Emitted each time that nothing is left to do.
process.on("beforeExit", runNextLine);

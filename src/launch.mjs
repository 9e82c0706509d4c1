/** The file `dryline` itself: starts the program. Nothing else belongs here, as it is compiled anew each time. */
import { fstatSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { loadProgram } from "./load-program.mjs";

/** Put in by the build. */
const commands = process.env.DRYLINE_COMMANDS ?? "";
const dashboard = process.env.DRYLINE_DASHBOARD ?? "";

/**
 * Either program does the whole work; that for the other's is only slower to start.
 *
 * @param {number} descriptor
 */
function mayBeTerminal(descriptor) {
  try {
    return fstatSync(descriptor).isCharacterDevice();
  } catch {
    return false;
  }
}

const program = process.argv.length === 2 && mayBeTerminal(0) && mayBeTerminal(1) ? dashboard : commands;
loadProgram(join(import.meta.dirname, program)).run(createRequire(import.meta.filename));

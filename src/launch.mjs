/** The file `dryline` itself: starts the program. Nothing else belongs here, as it is compiled anew each time. */
import { join } from "node:path";
import { mayBeTerminal } from "./commands/may-be-terminal.mjs";
import { loadProgram } from "./load-program.mjs";

/** Put in by the build. Either does the whole work; the one that is for the other's is only slower to start. */
const commands = process.env.DRYLINE_COMMANDS ?? "";
const dashboard = process.env.DRYLINE_DASHBOARD ?? "";

const program = process.argv.length === 2 && mayBeTerminal(0) && mayBeTerminal(1) ? dashboard : commands;
// Node's own, as this is bundled to CommonJS: to load node:module for another takes a millisecond.
loadProgram(join(import.meta.dirname, program)).run(require);

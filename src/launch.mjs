/** The file `dryline` itself: starts the program. Nothing else belongs here, as it is compiled anew each time. */
import { createRequire } from "node:module";
import { join } from "node:path";
import { mayBeTerminal } from "./commands/may-be-terminal.mjs";
import { loadProgram } from "./load-program.mjs";

/** Put in by the build. Either does the whole work; the one that is for the other's is only slower to start. */
const commands = process.env.DRYLINE_COMMANDS ?? "";
const dashboard = process.env.DRYLINE_DASHBOARD ?? "";

const program = process.argv.length === 2 && mayBeTerminal(0) && mayBeTerminal(1) ? dashboard : commands;
loadProgram(join(import.meta.dirname, program)).run(createRequire(import.meta.filename));

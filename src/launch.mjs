/** The file `dryline` itself: starts the program. Nothing else belongs here, as it is compiled anew each time. */
import { join } from "node:path";
import { mayBeTerminal } from "./commands/may-be-terminal.mjs";
import { loadProgram } from "./load-program.mjs";

/** Put in by the build. Each does the whole work; those that are for the others' are only slower to start. */
const now = process.env.DRYLINE_NOW ?? "";
const commands = process.env.DRYLINE_COMMANDS ?? "";
const dashboard = process.env.DRYLINE_DASHBOARD ?? "";

const [, , word] = process.argv;
const others = word === undefined || word === "now" ? now : commands;
const program = word === undefined && mayBeTerminal(0) && mayBeTerminal(1) ? dashboard : others;
// Node's own `require`, as this is bundled to CommonJS: to make another takes loading node:module, a millisecond.
loadProgram(join(import.meta.dirname, program)).run(require);

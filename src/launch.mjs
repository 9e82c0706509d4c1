/** The file `dryline` itself: starts the program. Nothing else belongs here, as it is compiled anew each time. */
import { createRequire } from "node:module";
import { join } from "node:path";
import { loadProgram } from "./load-program.mjs";

/** Put in by the build. */
const program = process.env.DRYLINE_PROGRAM ?? "";

loadProgram(join(import.meta.dirname, program)).run(createRequire(import.meta.filename));

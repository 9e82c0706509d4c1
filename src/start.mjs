/**
 * What `npm start` runs: builds what is missing or stale, then becomes the command `dryline`.
 * The program runs in this same process, so that signals, the terminal and the exit code are its own.
 */
import { createRequire } from "node:module";
import { builtCommand, ensureBuilt } from "./fresh.mjs";

const refusal = await ensureBuilt();
if (refusal === undefined) {
  process.argv[1] = builtCommand;
  createRequire(import.meta.url)(builtCommand);
} else {
  console.error(`dryline: ${refusal}`);
  process.exitCode = 1;
}

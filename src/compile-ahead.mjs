/** Has the everyday functions of the programs compiled once, for its next starts under this Node to take up. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** It takes three to four seconds where nothing else is busy. */
const longestMilliseconds = 60_000;

/**
 * Where it fails, as when SQLite's binary is not installed yet, the program still runs, only slower to start.
 *
 * @param {readonly string[]} programs paths of their bundles, in the order of programs.mjs, in a folder that can be written
 */
export function compileAhead(programs) {
  const home = mkdtempSync(join(tmpdir(), "dryline-build-"));
  try {
    spawnSync(process.execPath, [join(import.meta.dirname, "warm-up.mjs"), ...programs], {
      env: { ...process.env, DRYLINE_HOME: home, TERM: "xterm-256color" },
      stdio: "ignore",
      timeout: longestMilliseconds,
    });
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

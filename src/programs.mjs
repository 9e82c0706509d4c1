/** The programs of which the launcher chooses one, and what each of them holds itself. */
import { join } from "node:path";
import { packageRoot } from "./fresh.mjs";

export const programNames = /** @type {const} */ (["now", "commands", "dashboard"]);

/** @typedef {(typeof programNames)[number]} Program */

/**
 * Sources reached by a dynamic import that only some programs hold, so that the others have less to read and to take up.
 * Those reach it as a bundle apart: each program does the whole work, and is only slower at what is not its own.
 *
 * @type {Readonly<Record<string, readonly Program[]>>}
 */
const held = {
  "src/commands/command-line.ts": ["now", "commands"],
  "src/commands/command-table.ts": ["commands"],
  "src/acts/decide.ts": ["commands", "dashboard"],
  "src/plan/compare-finishes.ts": ["commands", "dashboard"],
  "src/workshop/planning.ts": ["dashboard"],
  "src/dashboard/run-dashboard.ts": ["dashboard"],
};

/** Paths of all that not every program holds. */
export const heldBySome = pathsWhere(() => true);

/**
 * @param {Program} program
 * @returns {string[]} paths of what it holds of that
 */
export function heldBy(program) {
  return pathsWhere((holders) => holders.includes(program));
}

/**
 * @param {(holders: readonly Program[]) => boolean} fits
 * @returns {string[]}
 */
function pathsWhere(fits) {
  return Object.entries(held).flatMap(([source, holders]) =>
    fits(holders) ? [join(packageRoot, source)] : [],
  );
}

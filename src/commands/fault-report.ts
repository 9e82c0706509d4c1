import { mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { plainText } from "../words/plain-text.ts";
import { machinePlaces } from "../workshop/open-workshop.ts";
import { placesBySources } from "./by-sources.ts";

/**
 * Writes down a fault of our own, for whoever is to mend it: what was typed, where it broke, on what machine.
 *
 * @returns the one line for the maker, with where the report was written
 */
export function reportFault(fault: unknown, argv: readonly string[], version: string): string {
  const { version: node, platform, arch } = globalThis.process;
  const what = fault instanceof Error ? fault.message : String(fault);
  const report = [
    `dryline ${version}, Node ${node}, ${platform} ${arch}, ${new Date().toISOString()}`,
    `typed: ${JSON.stringify(argv)}`,
    fault instanceof Error ? placesBySources(fault.stack ?? fault.message) : String(fault),
    "",
  ].join("\n");
  const name = `fault-${new Date().toISOString().replace(/[:.]/g, "-")}-${globalThis.process.pid}.txt`;
  const file = write(stateFolder(), name, report) ?? write(tmpdir(), name, report);
  const where = file === null ? "and no report could be written" : `the report is in ${file}`;
  return plainText(`dryline: a fault of our own, ${where}: ${what.split("\n")[0] ?? ""}`);
}

/** Null: this machine has no place for it. */
function stateFolder(): string | null {
  try {
    return machinePlaces().state;
  } catch {
    return null;
  }
}

/** Null: it could not be written there. A report already there stays: the name has the time to the millisecond. */
function write(folder: string | null, name: string, report: string): string | null {
  if (folder === null) return null;
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const file = join(folder, name);
    writeFileSync(file, report, { flag: "wx", mode: 0o600 });
    return file;
  } catch {
    return null;
  }
}

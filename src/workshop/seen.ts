import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Instant } from "../time/instant.ts";

const FILE = "seen.json";
/** What was told of the clock last. */
const CLOCK_FILE = "clock-told";

/** When the maker last had the dashboard before the eyes; null: never, or it cannot be told. */
export function readSeen(stateFolder: string): Instant | null {
  try {
    const { at } = JSON.parse(readFileSync(join(stateFolder, FILE), "utf8")) as { at: unknown };
    return typeof at === "number" ? at : null;
  } catch {
    return null;
  }
}

/** Remembers it; a disk that refuses only makes the next "since you were here" longer. */
export function markSeen(stateFolder: string, at: Instant): void {
  write(stateFolder, FILE, JSON.stringify({ at }));
}

/** Whether this is news to the maker; from now on it is none. A disk that refuses has it told again. */
export function isNewsOfClock(stateFolder: string, told: string): boolean {
  try {
    if (readFileSync(join(stateFolder, CLOCK_FILE), "utf8") === told) return false;
  } catch {
    // Nothing was told yet.
  }
  write(stateFolder, CLOCK_FILE, told);
  return true;
}

function write(stateFolder: string, file: string, text: string): void {
  try {
    mkdirSync(stateFolder, { recursive: true, mode: 0o700 });
    writeFileSync(join(stateFolder, file), text, { mode: 0o600 });
  } catch {
    // Nothing that counts is lost.
  }
}

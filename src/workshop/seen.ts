import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Instant } from "../time/instant.ts";

const FILE = "seen.json";

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
  try {
    mkdirSync(stateFolder, { recursive: true, mode: 0o700 });
    writeFileSync(join(stateFolder, FILE), JSON.stringify({ at }), { mode: 0o600 });
  } catch {
    // Nothing that counts is lost.
  }
}

import { accessSync, constants, existsSync, readFileSync, statSync } from "node:fs";
import { dirname } from "node:path";
import type { Database } from "better-sqlite3";
import { openBytes, openDatabase } from "./open-database.ts";

/** Whether a journal's file and its folder, where SQLite keeps a log beside it, may be written. */
export function mayWrite(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    accessSync(dirname(path), constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/** The places of the two bytes that say how a file is written: the SQLite file format, section 1.3.3. */
const VERSIONS_AT = [18, 19] as const;
/** By a rollback journal; 2 is WAL, for which SQLite wants a log it may write. */
const BY_ROLLBACK = 1;

/**
 * Opens a journal that cannot be written, as on a disk mounted to be read. With a log beside it another program has it
 * open, or was killed: SQLite reads both. Without one the file is all there is, and a copy of it in memory is read; what
 * is brought up to date there is forgotten.
 */
export function openForReading(path: string): Database {
  return existsSync(`${path}-wal`) ? openDatabase(path, { readonly: true }) : openCopy(path);
}

/** Whether the file holds all there is: nothing lies in the log beside it. */
export function isWhole(path: string): boolean {
  return (statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0) === 0;
}

/** Opens a copy in memory of a journal that is whole. */
export function openCopy(path: string): Database {
  const bytes = readFileSync(path);
  for (const at of VERSIONS_AT) bytes[at] = BY_ROLLBACK;
  return openBytes(bytes);
}

import { chmodSync, existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import type { Database, Statement } from "better-sqlite3";
import { createFile } from "./create-file.ts";
import { checkHeader, checkMarks } from "./file-header.ts";
import { openDatabase } from "./open-database.ts";
import { isWhole, mayWrite, openCopy, openForReading } from "./open-for-reading.ts";
import { explainError, JournalTrouble } from "./trouble.ts";
import { bringToNewestForm } from "./upgrade-tables.ts";

/** How long another program's write is waited for. Ours take milliseconds; a rebuild of ten years, seconds. */
const patienceMilliseconds = 5_000;

/** One open SQLite file and the statements prepared on it. */
export interface SqliteFile {
  readonly path: string;
  readonly database: Database;
  /** False: the disk or its rights allow reading alone. */
  readonly canWrite: boolean;
  /** That is so because the disk has no room. */
  readonly isFull: boolean;
  /** Prepared at the first call, the same after that. */
  prepare(sql: string): Statement<unknown[]>;
}

/**
 * Opens the journal's file, making an empty one if there is none: mode 0600, WAL, every commit on disk before it is
 * acknowledged. One that cannot be written is opened to be read.
 *
 * @param path relative ones count from the working folder
 * @throws JournalTrouble
 */
export function openFile(path: string): SqliteFile {
  const file = resolve(path);
  try {
    if (!existsSync(file)) createFile(file);
    checkHeader(file);
    if (!mayWrite(file)) return asFile(file, openForReading(file), "may not be written");
    closeToOthers(file);
    return prepareConnection(file);
  } catch (error) {
    const trouble = explainError(error, file);
    const isFull = trouble instanceof JournalTrouble && trouble.code === "disk full";
    // SQLite finds no room for its log then. What hangs and what to work now can be told all the same.
    if (isFull && isWhole(file)) return asFile(file, openCopy(file), "disk full");
    throw trouble;
  }
}

function prepareConnection(path: string): SqliteFile {
  const database = openDatabase(path, { timeout: patienceMilliseconds });
  try {
    // In WAL mode the driver falls back to NORMAL after the first write unless FULL is asked for.
    database.pragma("synchronous = FULL");
    // On macOS only this reaches the disk itself; elsewhere it changes nothing.
    database.pragma("fullfsync = ON");
    // A copy made by SQLite's own tools may have lost it.
    database.pragma("journal_mode = WAL");
  } catch (error) {
    database.close();
    throw error;
  }
  return asFile(path, database, null);
}

/** @param hindrance why it can only be read; null: it can be written */
function asFile(
  path: string,
  database: Database,
  hindrance: "may not be written" | "disk full" | null,
): SqliteFile {
  try {
    // The header in the file may be older than the log beside it, so the marks are read again through SQLite.
    checkMarks(
      path,
      Number(database.pragma("application_id", { simple: true })),
      Number(database.pragma("user_version", { simple: true })),
    );
    bringToNewestForm(database);
  } catch (error) {
    database.close();
    throw error;
  }
  const statements = new Map<string, Statement<unknown[]>>();
  return {
    path,
    database,
    canWrite: hindrance === null,
    isFull: hindrance === "disk full",
    prepare(sql) {
      const known = statements.get(sql);
      if (known !== undefined) return known;
      const made = database.prepare<unknown[]>(sql);
      statements.set(sql, made);
      return made;
    },
  };
}

/** A journal put back from a backup may stand open to all. SQLite gives its log the mode of the file. */
function closeToOthers(path: string): void {
  for (const file of [path, `${path}-wal`, `${path}-shm`]) {
    const mode = statSync(file, { throwIfNoEntry: false })?.mode;
    if (mode !== undefined && (mode & 0o077) !== 0) chmodSync(file, 0o600);
  }
}

import { chmodSync, existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import type { Database, Statement } from "better-sqlite3";
import { createFile } from "./create-file.ts";
import { checkHeader, checkMarks } from "./file-header.ts";
import { openDatabase } from "./open-database.ts";
import { mayWrite, openForReading } from "./open-for-reading.ts";
import { explainError } from "./trouble.ts";
import { bringToNewestForm } from "./upgrade-tables.ts";

/** How long another program's write is waited for. Ours take milliseconds; a rebuild of ten years, seconds. */
const patienceMilliseconds = 5_000;

/** One open SQLite file and the statements prepared on it. */
export interface SqliteFile {
  readonly path: string;
  readonly database: Database;
  /** False: the disk or its rights allow reading alone. */
  readonly canWrite: boolean;
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
    if (!mayWrite(file)) return prepareReading(file);
    closeToOthers(file);
    return prepareConnection(file);
  } catch (error) {
    throw explainError(error, file);
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
  return asFile(path, database, true);
}

function prepareReading(path: string): SqliteFile {
  return asFile(path, openForReading(path), false);
}

function asFile(path: string, database: Database, canWrite: boolean): SqliteFile {
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
    canWrite,
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

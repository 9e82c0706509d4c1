import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
} from "node:fs";
import { dirname } from "node:path";
import { openDatabase } from "./open-database.ts";
import { APPLICATION_ID } from "./tables.ts";
import { bringToNewestForm } from "./upgrade-tables.ts";

/**
 * Makes an empty journal at `path`. It is made whole beside it and then linked into place: a program killed meanwhile
 * leaves no half journal, and of two programs that come first together one finds the other's.
 *
 * @throws what the file system or SQLite throws
 */
export function createFile(path: string): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.${globalThis.crypto.randomUUID()}.new`;
  try {
    // Made by us, not by SQLite, so that it never stands open to others, whatever the umask.
    closeSync(openSync(unfinished, "wx", 0o600));
    chmodSync(unfinished, 0o600);
    fill(unfinished);
    putInPlace(unfinished, path);
    syncFolder(dirname(path));
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function fill(path: string): void {
  const database = openDatabase(path);
  try {
    database.pragma("synchronous = FULL");
    database.pragma(`application_id = ${APPLICATION_ID}`);
    bringToNewestForm(database);
    // Kept in the file: every later connection finds it in this mode.
    database.pragma("journal_mode = WAL");
  } finally {
    database.close();
  }
}

/** Never over a file that is there: it may hold a life's work. */
function putInPlace(unfinished: string, path: string): void {
  try {
    linkSync(unfinished, path);
  } catch {
    // Another program was first; else this disk knows no links (a memory stick).
    if (!existsSync(path)) renameSync(unfinished, path);
  }
}

/** Without it the file is on disk but its name may not be, when the power goes. */
function syncFolder(folder: string): void {
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

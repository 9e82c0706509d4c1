import { closeSync, openSync, readSync, statSync } from "node:fs";
import { APPLICATION_ID, SCHEMA_VERSION } from "./tables.ts";
import { JournalTrouble } from "./trouble.ts";

const headerLength = 100;

/**
 * Looks at a file's own first bytes before SQLite may touch it, so that a file that is none of ours stays as it is.
 * The places of the fields: the SQLite file format, section 1.3, "The Database Header".
 *
 * @throws JournalTrouble "not a journal", "damaged" (cut short) or "newer schema"; the file system's own errors
 */
export function checkHeader(path: string): void {
  const header = Buffer.alloc(headerLength);
  const file = openSync(path, "r");
  let length: number;
  try {
    length = readSync(file, header, 0, headerLength, 0);
  } finally {
    closeSync(file);
  }
  if (length < headerLength || header.toString("latin1", 0, 16) !== "SQLite format 3\0") {
    const what = length === 0 ? "is empty, so it is not" : "is not";
    throw new JournalTrouble(
      "not a journal",
      `${path} ${what} a dryline journal: put its backup there, or move it away to start a new one.`,
    );
  }
  checkMarks(path, header.readUInt32BE(68), header.readUInt32BE(60));
  // 1 stands for 65,536, which two bytes cannot hold.
  const pageSize = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  // With a log beside it, the missing pages may be there.
  if (sizeOf(path) < pageSize * header.readUInt32BE(28) && sizeOf(`${path}-wal`) === 0) {
    throw new JournalTrouble(
      "damaged",
      `The journal ${path} is cut short: put its newest backup in its place; the damaged one was not changed.`,
    );
  }
}

/**
 * @param applicationId SQLite's application_id of the file
 * @param schemaVersion SQLite's user_version of the file
 * @throws JournalTrouble "not a journal" for another program's database, "newer schema" for a newer dryline's
 */
export function checkMarks(path: string, applicationId: number, schemaVersion: number): void {
  if (applicationId !== APPLICATION_ID) {
    throw new JournalTrouble(
      "not a journal",
      `${path} is another program's database, not a dryline journal: move it away, or set DRYLINE_HOME elsewhere.`,
    );
  }
  if (schemaVersion > SCHEMA_VERSION) {
    throw new JournalTrouble(
      "newer schema",
      `The journal ${path} was written by a newer dryline (its form is ${schemaVersion}, this one knows ${SCHEMA_VERSION}): install the newer one again.`,
    );
  }
}

/** @returns bytes; 0 when there is no such file */
function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { onTestFinished } from "vitest";
import type { Deriving } from "../../src/journal/derive-pieces.ts";
import type { Journal } from "../../src/journal/journal.ts";
import { openJournal } from "../../src/journal/sqlite-journal.ts";
import { summarisePlainly } from "./summarise-plainly.ts";

/** What these tests derive beside the events, so that they need no room above the journal. */
export const plainly: Deriving = { summarise: summarisePlainly, summaryVersion: 1 };

/** A folder of its own for one test, gone after it. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "dryline-journal-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A new journal in a folder of its own; both gone after the test. */
export async function scratchJournal(deriving = plainly): Promise<{ journal: Journal; path: string }> {
  const path = join(scratchFolder(), "journal.db");
  return { journal: await openForTest(path, deriving), path };
}

/** Opens a journal that is closed after the test. */
export async function openForTest(path: string, deriving = plainly): Promise<Journal> {
  const journal = await openJournal(path, deriving);
  onTestFinished(() => journal.close());
  return journal;
}

/** The file seen by SQLite itself, past our own code; for a look or for damage. */
export function bareFile(path: string): Database.Database {
  const database = new Database(path, { fileMustExist: true });
  onTestFinished(() => {
    database.close();
  });
  return database;
}

/** Every row of these tables, sorted, for comparing. */
export function bareRows(path: string, ...tables: readonly string[]): string[] {
  const database = new Database(path, { readonly: true });
  try {
    return tables.flatMap((table) =>
      database
        .prepare(`SELECT * FROM ${table}`)
        .all()
        .map((row) => `${table} ${JSON.stringify(row)}`)
        .sort(),
    );
  } finally {
    database.close();
  }
}

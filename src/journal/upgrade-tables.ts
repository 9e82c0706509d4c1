import type { Database } from "better-sqlite3";
import { FORMS, SCHEMA_VERSION } from "./tables.ts";

/**
 * Gives a file of an older form, or an empty one, the tables it lacks, all in one transaction. Of several programs
 * started together one does it and the others find it done.
 *
 * @throws what SQLite throws
 */
export function bringToNewestForm(database: Database): void {
  if (formOf(database) >= SCHEMA_VERSION) return;
  const bring = database.transaction(() => {
    for (const form of FORMS.slice(formOf(database))) database.exec(form);
    database.pragma(`user_version = ${SCHEMA_VERSION}`);
  });
  bring.immediate();
}

function formOf(database: Database): number {
  return Number(database.pragma("user_version", { simple: true }));
}

import type { Instant } from "../time/instant.ts";
import type { Tag } from "./event.ts";
import type { CureTest } from "./journal.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const newest = `
SELECT coat, tag, step, pass, least, most, at FROM cure_test WHERE at >= ? ORDER BY at, tag, step, pass
`;

/** @returns touch tests from a moment on, oldest first */
export function readCureTests(file: SqliteFile, from: Instant): CureTest[] {
  // STRICT tables: the columns have the types of CureTest.
  return file.prepare(newest).all(from) as CureTest[];
}

/** Keeps the touch tests of some pieces in place of what was kept of them. */
export function writeCureTests(file: SqliteFile, tags: readonly Tag[], tests: readonly CureTest[]): void {
  const write = file.database.transaction(() => {
    for (const tag of tags) file.prepare("DELETE FROM cure_test WHERE tag = ?").run(tag);
    for (const { coat, tag, step, pass, least, most, at } of tests) {
      file
        .prepare("INSERT INTO cure_test VALUES (?, ?, ?, ?, ?, ?, ?)")
        .run(coat, tag, step, pass, least, most, at);
    }
  });
  write.immediate();
}

import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { appendAct } from "../../src/journal/append-act.ts";
import { rebuildPieces } from "../../src/journal/derive-pieces.ts";
import { openFile } from "../../src/journal/sqlite-file.ts";
import { anAct, tagged } from "./made-acts.ts";
import { plainly, scratchFolder } from "./scratch.ts";

test("SQLite still syncs each commit in full after a write, where by itself it falls back to less", () => {
  const file = openFile(join(scratchFolder(), "journal.db"));
  onTestFinished(() => {
    file.database.close();
  });
  rebuildPieces(file, plainly);
  for (const tag of [1, 2]) {
    appendAct(file, anAct([tagged(tag)]), plainly);
    // 2 is FULL in SQLite's documentation of the pragma; 1 would be NORMAL.
    expect(file.database.pragma("synchronous", { simple: true })).toBe(2);
  }
  expect(file.database.pragma("journal_mode", { simple: true })).toBe("wal");
});

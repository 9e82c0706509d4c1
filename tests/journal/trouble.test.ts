import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { appendAct } from "../../src/journal/append-act.ts";
import { rebuildPieces } from "../../src/journal/derive-pieces.ts";
import { openFile, type SqliteFile } from "../../src/journal/sqlite-file.ts";
import { explainError, JournalTrouble } from "../../src/journal/trouble.ts";
import { anAct, monday, shopWide, tagged } from "./made-acts.ts";
import { bareFile, plainly, scratchFolder } from "./scratch.ts";

/** A journal of one act, by its insides, so that SQLite can be made to fail. */
function openInsides(): SqliteFile {
  const file = openFile(join(scratchFolder(), "journal.db"));
  onTestFinished(() => {
    file.database.close();
  });
  rebuildPieces(file, plainly);
  appendAct(file, anAct([tagged(1)]), plainly);
  return file;
}

/** What an append says when it fails. */
function failToAppend(file: SqliteFile, text = "a note"): unknown {
  try {
    appendAct(file, anAct([shopWide({ kind: "noted", text }, monday)]), plainly);
  } catch (error) {
    return explainError(error, file.path);
  }
  return expect.fail("the act was kept");
}

const newest = (file: SqliteFile) => bareFile(file.path).prepare("SELECT max(seq) FROM event").pluck().get();

describe("one sentence, and nothing of the act kept, when", () => {
  test("the disk is full", () => {
    const file = openInsides();
    // A file that may not grow: to SQLite the same as a disk with no room.
    file.database.pragma(`max_page_count = ${file.database.pragma("page_count", { simple: true })}`);
    const trouble = failToAppend(file, "n".repeat(20_000));
    expect(trouble).toBeInstanceOf(JournalTrouble);
    expect(trouble).toMatchObject({ code: "disk full" });
    expect(String(trouble)).toContain(`The disk that holds ${file.path} is full: make room`);
    expect(newest(file)).toBe(1);
    // And with room again it goes on.
    file.database.pragma("max_page_count = 100000");
    const again = appendAct(file, anAct([shopWide({ kind: "noted", text: "again" }, monday)]), plainly);
    expect(again).toEqual({ kept: true, act: 2, newest: 2 });
  });

  test("the file cannot be written", () => {
    const file = openInsides();
    file.database.pragma("query_only = ON");
    expect(failToAppend(file)).toMatchObject({ code: "read only" });
    expect(newest(file)).toBe(1);
  });

  test("another program holds it for too long", () => {
    const file = openInsides();
    const other = bareFile(file.path);
    other.exec("BEGIN IMMEDIATE");
    file.database.pragma("busy_timeout = 1");
    expect(failToAppend(file)).toMatchObject({ code: "locked" });
    other.exec("ROLLBACK");
    expect(newest(file)).toBe(1);
  });
});

describe("what was thrown, told in our words:", () => {
  const withCode = (code: string, message = "") => Object.assign(new Error(message), { code });

  test.each([
    ["a driver without its native part", new Error("Could not locate the bindings file. Tried: …")],
    ["one built for another Node", withCode("ERR_DLOPEN_FAILED", "compiled against another version")],
    ["no driver at all", withCode("MODULE_NOT_FOUND", "Cannot find module 'better-sqlite3'")],
  ])("%s", (_, error) => {
    const trouble = explainError(error, "/j.db");
    expect(trouble).toMatchObject({ code: "missing binary", cause: error });
    expect(String(trouble)).toContain('run "npm ci"');
  });

  test.each([
    ["EROFS", "read only"],
    ["SQLITE_READONLY_DIRECTORY", "read only"],
    ["EACCES", "cannot open"],
    ["SQLITE_CANTOPEN_ISDIR", "cannot open"],
    ["SQLITE_IOERR_FSYNC", "cannot open"],
    ["ENOSPC", "disk full"],
    ["SQLITE_BUSY_RECOVERY", "locked"],
    ["SQLITE_CORRUPT_INDEX", "damaged"],
    ["SQLITE_IOERR_SHMSIZE", "disk full"],
    ["SQLITE_NOTADB", "not a journal"],
  ])("%s is %s", (given, code) => {
    expect(explainError(withCode(given), "/j.db")).toMatchObject({ code });
  });

  test("our own mistake stays what it is", () => {
    const mistake = new TypeError("The database connection is not open");
    expect(explainError(mistake, "/j.db")).toBe(mistake);
    expect(explainError(withCode("SQLITE_CONSTRAINT"), "/j.db")).not.toBeInstanceOf(JournalTrouble);
  });
});

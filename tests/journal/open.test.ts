import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { openJournal } from "../../src/journal/sqlite-journal.ts";
import type { JournalTrouble } from "../../src/journal/trouble.ts";
import { anAct, tagged } from "./made-acts.ts";
import { bareFile, openForTest, plainly, scratchFolder } from "./scratch.ts";

const permissions = (path: string) => (statSync(path).mode & 0o777).toString(8);

/** A journal of one act, closed again. */
async function closedJournal(): Promise<string> {
  const path = join(scratchFolder(), "journal.db");
  const journal = await openJournal(path, plainly);
  await journal.append(anAct([tagged(1)]));
  journal.close();
  return path;
}

/** Expects a refusal in one sentence that names the file, and a file left as it was. */
async function expectRefused(path: string, code: JournalTrouble["code"], saying: RegExp): Promise<void> {
  const before = readFileSync(path);
  const refused: JournalTrouble = await openJournal(path, plainly).then(
    () => expect.fail(`${path} was opened`),
    (error: JournalTrouble) => error,
  );
  expect(refused).toMatchObject({ name: "JournalTrouble", code });
  expect(refused.message).toMatch(saying);
  expect(refused.message).toContain(path);
  expect(refused.message).toMatch(/^[^\n]+: [^\n]+\.$/);
  expect(readFileSync(path)).toEqual(before);
  expect(readdirSync(join(path, ".."))).toEqual(["journal.db"]);
}

describe("a new journal", () => {
  test("is for the maker's eyes only, with its folder and what SQLite keeps beside it", async () => {
    const path = join(scratchFolder(), "made", "for it", "journal.db");
    const before = process.umask(0);
    try {
      const journal = await openForTest(path);
      await journal.append(anAct([tagged(1)]));
    } finally {
      process.umask(before);
    }
    expect(permissions(join(path, ".."))).toBe("700");
    expect(permissions(join(path, "../.."))).toBe("700");
    expect(["", "-wal", "-shm"].map((end) => permissions(path + end))).toEqual(["600", "600", "600"]);
    expect(readdirSync(join(path, "..")).sort()).toEqual(["journal.db", "journal.db-shm", "journal.db-wal"]);
  });

  test("is marked as ours and with the version of its form", async () => {
    const file = bareFile(await closedJournal());
    // The ASCII letters of "dryl".
    expect(file.pragma("application_id", { simple: true })).toBe(0x6472796c);
    expect(file.pragma("user_version", { simple: true })).toBe(5);
    expect(file.pragma("journal_mode", { simple: true })).toBe("wal");
  });
});

test("one put back open to all is closed to others again", async () => {
  const path = await closedJournal();
  chmodSync(path, 0o664);
  await openForTest(path);
  expect(permissions(path)).toBe("600");
});

test("one that SQLite's own tools took out of WAL mode goes back to it", async () => {
  const path = await closedJournal();
  bareFile(path).pragma("journal_mode = DELETE");
  const journal = await openForTest(path);
  expect((await journal.read({ of: "all" })).newest).toBe(1);
  expect(bareFile(path).pragma("journal_mode", { simple: true })).toBe("wal");
});

describe("refused in one sentence, and untouched:", () => {
  test("a journal of a newer dryline", async () => {
    const path = await closedJournal();
    const file = new Database(path);
    file.pragma("user_version = 6");
    file.close();
    await expectRefused(path, "newer schema", /its form is 6, this one knows 5/);
  });

  test("a file of something else", async () => {
    const path = join(scratchFolder(), "journal.db");
    writeFileSync(path, "Dear diary,\n".repeat(400));
    await expectRefused(path, "not a journal", /is not a dryline journal/);
  });

  test("a file with nothing in it", async () => {
    const path = join(scratchFolder(), "journal.db");
    writeFileSync(path, "");
    await expectRefused(path, "not a journal", /is empty/);
  });

  test("another program's database", async () => {
    const path = join(scratchFolder(), "journal.db");
    const file = new Database(path);
    file.exec("CREATE TABLE recipe (name TEXT)");
    file.close();
    await expectRefused(path, "not a journal", /another program's database/);
  });

  test("a journal cut short", async () => {
    const path = await closedJournal();
    truncateSync(path, statSync(path).size - 4096);
    await expectRefused(path, "damaged", /is cut short/);
  });

  test("a journal whose tables were overwritten", async () => {
    const path = await closedJournal();
    const bytes = readFileSync(path);
    // The first page holds the names of all tables, after its header of 100 bytes.
    bytes.fill(0xff, 100, 4096);
    writeFileSync(path, bytes);
    await expectRefused(path, "damaged", /is damaged/);
  });
});

test("a folder in the journal's place is refused", async () => {
  const path = join(scratchFolder(), "journal.db");
  mkdirSync(path);
  await expect(openJournal(path, plainly)).rejects.toMatchObject({ code: "cannot open" });
});

test("a file in the place of the journal's folder is refused", async () => {
  const folder = scratchFolder();
  writeFileSync(join(folder, "dryline"), "");
  const path = join(folder, "dryline", "journal.db");
  await expect(openJournal(path, plainly)).rejects.toMatchObject({ code: "cannot open" });
});

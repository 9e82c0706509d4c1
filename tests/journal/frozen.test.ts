import { readFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { foldShop } from "../../src/shop/fold.ts";
import { SUMMARY_VERSION, summarise } from "../../src/shop/summarise.ts";
import { anAct, days, monday, taken } from "./made-acts.ts";
import { bareFile, openForTest, scratchFolder, scratchJournal } from "./scratch.ts";

const dump = readFileSync(join(import.meta.dirname, "frozen", "0.1.0.sql"), "utf8");

/** The journal as release 0.1.0 wrote it, in a file of its own. */
function thaw(): string {
  const path = join(scratchFolder(), "journal.db");
  const file = new Database(path);
  file.exec(dump);
  file.close();
  return path;
}

test("a journal of release 0.1.0, with an event of every kind, opens and is read whole", async () => {
  const journal = await openForTest(thaw(), { summarise, summaryVersion: SUMMARY_VERSION });
  const reading = await journal.read({ of: "all" });
  expect(reading.setAside).toEqual([]);
  // 20 kinds of event.
  expect(new Set(reading.events.map(({ kind }) => kind)).size).toBe(20);
  const { pieces, setAside } = foldShop(reading);
  expect(setAside).toEqual([]);
  expect([...pieces.values()].map(({ tag, end }) => [tag, end?.how ?? "out"])).toEqual([
    [1, "sold"],
    [2, "out"],
    [3, "out"],
    [4, "scrapped"],
  ]);
  expect(await journal.append(anAct([taken(3, "shape", monday + days(8))]))).toMatchObject({ kept: true });
});

test("the tables of this form are still those of release 0.1.0: another form needs another number", async () => {
  const { path } = await scratchJournal();
  const form = (file: string) =>
    bareFile(file).prepare("SELECT name, sql FROM sqlite_schema ORDER BY name").all();
  expect(form(path)).toEqual(form(thaw()));
});

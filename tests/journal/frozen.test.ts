import { readFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { SCHEMA_VERSION } from "../../src/journal/tables.ts";
import { foldShop } from "../../src/shop/fold.ts";
import { SUMMARY_VERSION, summarise } from "../../src/shop/summarise.ts";
import { anAct, days, monday, taken } from "./made-acts.ts";
import { bareFile, bareRows, openForTest, scratchFolder, scratchJournal } from "./scratch.ts";

/** Rows of its event table. */
const EVENTS = 56;

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

/** Every table, index and trigger of a file as it was declared. */
function declared(path: string): unknown[] {
  return bareFile(path).prepare("SELECT name, sql FROM sqlite_schema ORDER BY name").all();
}

test("the first form's tables are still those of release 0.1.0: a newer form only adds to them", async () => {
  const { path } = await scratchJournal();
  expect(declared(path)).toEqual(expect.arrayContaining(declared(thaw())));
});

test("a journal of release 0.1.0 is brought to the form of a new one when it is opened, and loses nothing", async () => {
  const { path } = await scratchJournal();
  const thawed = thaw();
  const events = bareRows(thawed, "event");
  await openForTest(thawed);
  expect(declared(thawed)).toEqual(declared(path));
  expect(bareFile(thawed).pragma("user_version", { simple: true })).toBe(SCHEMA_VERSION);
  expect(bareRows(thawed, "event")).toEqual(events);
  expect(events).toHaveLength(EVENTS);
});

test("a program that opens it while another has brought it there finds nothing left to do", async () => {
  const thawed = thaw();
  const first = await openForTest(thawed);
  const second = await openForTest(thawed);
  expect(await second.read({ of: "all" })).toEqual(await first.read({ of: "all" }));
});

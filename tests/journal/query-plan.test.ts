import type { Statement } from "better-sqlite3";
import Database from "better-sqlite3";
import { expect, test, vi } from "vitest";
import type { Journal } from "../../src/journal/journal.ts";
import { anAct, days, monday, shopWide, tagged, taken } from "./made-acts.ts";
import { bareFile, scratchJournal } from "./scratch.ts";

/** Every statement prepared while something is asked of the journal for the first time. */
async function statementsOf(ask: (journal: Journal) => Promise<unknown>): Promise<string[]> {
  const { journal } = await scratchJournal();
  await journal.append(anAct([tagged(1)]));
  // A clock found wrong, as some statements are asked only then.
  await journal.append(anAct([shopWide({ kind: "clock", since: 1, minutes: 5 }, monday)]));
  const prepare = vi.spyOn(Database.prototype, "prepare");
  try {
    await ask(journal);
    return prepare.mock.calls.map(([sql]) => sql);
  } finally {
    prepare.mockRestore();
  }
}

/** Where a statement runs over a whole table of the journal, as SQLite itself tells its plan. */
function scansOf(sql: string, path: string): string[] {
  const file = bareFile(path);
  const explain: Statement<unknown[], { detail: string }> = file.prepare(`EXPLAIN QUERY PLAN ${sql}`);
  const named = [...sql.matchAll(/:(\w+)/g)].map(([, name]) => [name, 1]);
  const unnamed = [...sql.matchAll(/\?/g)].map(() => 1);
  const plan = named.length > 0 ? explain.all(Object.fromEntries(named)) : explain.all(...unnamed);
  const tables = /^SCAN (event|newest|undoing|piece|step_time|process_version|air|air_hour|cure_test)\b/;
  // The index of pieces that are out holds those alone, and so may be run through.
  return plan
    .map(({ detail }) => detail)
    .filter((step) => tables.test(step) && !step.endsWith("INDEX piece_out"));
}

const everyday: [string, (journal: Journal) => Promise<unknown>][] = [
  ['read("out")', (journal) => journal.read({ of: "out" })],
  ['read("tags")', (journal) => journal.read({ of: "tags", tags: [1] })],
  ['read("acts")', (journal) => journal.read({ of: "acts", acts: [1] })],
  ['read("span")', (journal) => journal.read({ of: "span", from: monday, to: monday + days(7) })],
  ["pieces()", (journal) => journal.pieces(monday, monday + days(7))],
  ["stepTimes()", (journal) => journal.stepTimes("walker", "seal", 25)],
  ["air()", (journal) => journal.air(monday, monday + days(7))],
  ["airByHour()", (journal) => journal.airByHour(monday)],
  ["newestAir()", (journal) => journal.newestAir()],
  ["appendAir()", (journal) => journal.appendAir([oneReading], "maker", monday)],
  ["cureTests()", (journal) => journal.cureTests(monday)],
  ["append()", (journal) => journal.append(anAct([taken(1, "shape", monday)], monday, expectations))],
];
const oneReading = { at: monday, place: null, celsius: 20, humidityPercent: 50, doubt: null };
const expectations = { tags: { 1: 1 }, stations: { bench: 0 }, newest: 2, nextTag: 2 };

test.each(everyday)("nothing that %s asks runs over all events, pieces or times", async (_, ask) => {
  const statements = (await statementsOf(ask)).filter((sql) =>
    /^\s*(SELECT|WITH|INSERT INTO air|INSERT OR REPLACE INTO air)/.test(sql),
  );
  expect(statements.length).toBeGreaterThan(0);
  const { path } = await scratchJournal();
  expect(statements.flatMap((sql) => scansOf(sql, path).map((step) => `${step} in ${sql}`))).toEqual([]);
});

test("the check itself finds what runs over all events", async () => {
  const { path } = await scratchJournal();
  expect(scansOf("SELECT body FROM event ORDER BY seq", path)).toEqual(["SCAN event"]);
  expect(scansOf("SELECT count(*) FROM event WHERE recorded + 1 > ?", path)).not.toEqual([]);
  expect(scansOf("SELECT body FROM event WHERE seq = ?", path)).toEqual([]);
});

import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { benchAfter, done } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", [
    "settings zone Europe/Dublin",
    'tag walker --hung "first clear" --since 12:00',
    "note 1 cold",
  ]);
});
afterEach(() => bench.remove());

test("a process damaged in the journal is told in one sentence by every command that needs it", async () => {
  spoil("UPDATE process_version SET definition = replace(definition, '\"after\":[', '\"after\":[7,')");
  for (const line of ["now", "week", "rack 1", "hang 1", "plan"]) {
    const said = await bench.type(line);
    expect({ line, exit: said.exit, out: said.out }).toEqual({ line, exit: 2, out: "" });
    expect(said.err).toMatch(/^A process that pieces were begun with is damaged in the journal [^\n]+\.\n$/);
  }
});

test("an event of the journal that fits nothing is told and does not count, and the rest does", async () => {
  expect(await done(bench, "Mon 18:00", "now")).not.toMatch(/does not count/);
  spoil(`UPDATE event SET body = '{"text":7}' WHERE kind = 'noted'`);
  const said = await done(bench, "Mon 18:01", "now");
  expect(said).toMatch(
    /An event of the journal does not count: \d+, what it says \("noted"\) is damaged\. Do it again if it is missing\.\n$/,
  );
  expect(said).toMatch(/1 walker/);
});

test("a piece with an event that does not count is worked on all the same", async () => {
  spoil("UPDATE event SET kind = 'sung' WHERE kind = 'noted'");
  await done(bench, "Mon 18:01", 'note 1 "warm again"');
  expect(await done(bench, "Mon 18:01", "now")).toMatch(
    /does not count: \d+, this dryline knows no event "sung"/,
  );
  expect(await done(bench, "Mon 18:02", "undo")).toMatch(/undone/i);
});

/** Nothing in a journal is changed: a spoilt row is written as a bad disk would. */
function spoil(sql: string): void {
  const file = new Database(bench.journal);
  file.exec("DROP TRIGGER IF EXISTS event_stays");
  file.exec(sql);
  file.close();
}

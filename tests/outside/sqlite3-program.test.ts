import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { SCHEMA_VERSION } from "../../src/journal/tables.ts";
import { anAct, tagged } from "../journal/made-acts.ts";
import { scratchJournal } from "../journal/scratch.ts";

const program = "sqlite3";
const has = spawnSync(program, ["--version"]).status === 0;

test(`the sqlite3 program reads the journal and finds it sound${has ? "" : " (not run: sqlite3 missing)"}`, async () => {
  if (!has) {
    expect(process.env.DRYLINE_DEMAND_OUTSIDE ?? "", "sqlite3 must be installed here").toBe("");
    return;
  }
  const { journal, path } = await scratchJournal();
  await journal.append(anAct([tagged(1), tagged(2)]));
  const asked =
    "PRAGMA integrity_check; PRAGMA user_version; SELECT seq, kind, tag FROM event; SELECT name FROM piece;";
  const { status, stdout, stderr } = spawnSync(program, [path, asked], { encoding: "utf8" });
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  expect(stdout.trim().split("\n")).toEqual([
    "ok",
    String(SCHEMA_VERSION),
    "1|tagged|1",
    "2|tagged|2",
    "lure 1",
    "lure 2",
  ]);
});

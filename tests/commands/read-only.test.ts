/** A shop on a disk that can only be read: it is told, and takes no acts. By the program as it is built. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, inject, test } from "vitest";
import { builtCommand } from "../../src/fresh.mjs";

/** Rights do not bind root: as root, become a user whom they do. */
const someUser = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
/** That user may have no way to the clone. */
const mayRead =
  spawnSync(process.execPath, ["-e", `fs.readFileSync(${JSON.stringify(builtCommand)})`], someUser).status ===
  0;

let folder: string;
let home: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-read-only-"));
  chmodSync(folder, 0o755);
  home = join(folder, "home");
  expect(inject("buildTrouble")).toBeNull();
  expect(dryline({}, "settings", "zone", "Europe/Dublin").status).toBe(0);
  expect(dryline({}, "tag", "carved walker", "--name", "smelt").status).toBe(0);
});
afterEach(() => {
  for (const path of [home, join(home, "cache"), join(home, "state")]) {
    try {
      chmodSync(path, 0o755);
    } catch {
      // It was not made.
    }
  }
  rmSync(folder, { recursive: true, force: true });
});

function dryline(user: typeof someUser, ...words: string[]) {
  const env = { ...process.env, DRYLINE_HOME: home };
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtCommand, ...words], {
    encoding: "utf8",
    env,
    ...user,
  });
  return { status, stdout, stderr };
}

/** Nothing in the data folder can be written any more, and all of it read. */
function closeToWriting(at = home): void {
  for (const entry of readdirSync(at, { withFileTypes: true })) {
    const path = join(at, entry.name);
    if (entry.isDirectory()) closeToWriting(path);
    else chmodSync(path, 0o444);
  }
  chmodSync(at, 0o555);
}

const nothingRecorded = () =>
  `Nothing can be recorded: allow writing ${home} and the journal in it, or set DRYLINE_HOME to another folder.\n`;

test.skipIf(!mayRead)("commands that tell work, and say once that nothing can be recorded", () => {
  closeToWriting();
  const before = readFileSync(join(home, "journal.sqlite"));
  for (const words of [
    ["now"],
    ["rack"],
    ["week"],
    ["plan", "--days", "1"],
    ["process", "list"],
    ["air"],
    ["hours"],
  ]) {
    const said = dryline(someUser, ...words);
    expect({ words, ...said, stdout: said.stdout !== "" }).toEqual({
      words,
      status: 0,
      stdout: true,
      stderr: nothingRecorded(),
    });
  }
  expect(dryline(someUser, "rack").stdout).toMatch(/^ {2}1 smelt /);
  expect(dryline(someUser, "rack", "--json")).toMatchObject({ status: 0, stderr: "" });
  expect(readFileSync(join(home, "journal.sqlite"))).toEqual(before);
  expect(readdirSync(home).filter((name) => name.startsWith("journal"))).toEqual(["journal.sqlite"]);
});

test.skipIf(!mayRead)("an act is refused in one sentence, and nothing of it is kept", () => {
  closeToWriting();
  for (const words of [
    ["tag", "carved walker"],
    ["note", "cold"],
    ["hours", "tomorrow", "18-22"],
    ["air", "18C", "50%"],
  ]) {
    const said = dryline(someUser, ...words);
    expect({ words, status: said.status, stdout: said.stdout }).toEqual({ words, status: 2, stdout: "" });
    expect(said.stderr).toMatch(
      /^The journal \S+ cannot be written: allow writing it and its folder, [^\n]+\.\n$/,
    );
  }
  expect(dryline(someUser, "rack").stdout).not.toMatch(/^ {2}2 /m);
  const taste = dryline(someUser, "settings", "clock", "12");
  expect(taste).toMatchObject({ status: 2, stdout: "" });
  expect(taste.stderr).toMatch(/config\.json cannot be written \(E\w+\): /);
});

test.skipIf(!mayRead)("what another program has written to the log beside it is read, too", () => {
  const open = new Database(join(home, "journal.sqlite"));
  // With a reader there, the log is not taken into the file.
  const rows = open.prepare("SELECT seq FROM event").iterate();
  rows.next();
  expect(dryline({}, "tag", "carved walker", "--name", "perch").status).toBe(0);
  closeToWriting();
  const said = dryline(someUser, "rack");
  expect(said).toMatchObject({ status: 0, stderr: nothingRecorded() });
  expect(said.stdout).toMatch(/^ {2}2 perch /m);
  rows.return?.();
  chmodSync(home, 0o755);
  for (const name of readdirSync(home).filter((one) => one.startsWith("journal")))
    chmodSync(join(home, name), 0o644);
  open.close();
});

import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, inject, test } from "vitest";
import { builtCommand } from "../../src/fresh.mjs";

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-whole-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

function dryline(...words: string[]) {
  const env = { ...process.env, DRYLINE_HOME: join(folder, "home") };
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtCommand, ...words], {
    encoding: "utf8",
    env,
  });
  return { status, stdout, stderr };
}

test("these tests run the program as it is built", () => {
  expect(inject("buildTrouble")).toBeNull();
});

test("without words and without a terminal it prints what now prints, and exits 0", () => {
  const alone = dryline();
  expect(alone).toMatchObject({ status: 0, stderr: "" });
  expect(alone.stdout).toMatch(/Nothing is out\. Begin one: /);
});

test("--version prints the version of the package", () => {
  const { version } = JSON.parse(readFileSync(join(import.meta.dirname, "../../package.json"), "utf8")) as {
    version: string;
  };
  expect(dryline("--version")).toEqual({ status: 0, stdout: `${version}\n`, stderr: "" });
});

test("an acknowledged act is there for the next program", () => {
  expect(dryline("tag", "carved walker", "--name", "smelt")).toMatchObject({ status: 0, stderr: "" });
  expect(dryline("rack").stdout).toMatch(/^ {2}1 smelt /);
  expect(dryline("hang", "9")).toEqual({ status: 2, stdout: "", stderr: "There is no 9: out is 1.\n" });
});

test("a reader that goes away ends it quietly", async () => {
  const env = { ...process.env, DRYLINE_HOME: join(folder, "home") };
  const program = spawn(process.execPath, [builtCommand, "help"], { env, stdio: ["ignore", "pipe", "pipe"] });
  program.stdout.destroy();
  let stderr = "";
  program.stderr.on("data", (text) => {
    stderr += text;
  });
  const status = await new Promise((resolve) => program.on("close", resolve));
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
});

test("a journal that is none is told in one sentence, exit 2, and as JSON", () => {
  mkdirSync(join(folder, "home"), { recursive: true });
  writeFileSync(
    join(folder, "home", "journal.sqlite"),
    "this is no database, however long it may be".repeat(40),
  );
  const said = dryline("now");
  expect(said).toMatchObject({ status: 2, stdout: "" });
  expect(said.stderr).toMatch(/^[^\n]+is not a dryline journal[^\n]+\.\n$/);
  expect(JSON.parse(dryline("now", "--json").stdout)).toHaveProperty("error.message");
});

test("a fault of our own is one line, exit 1, with the report where it says", () => {
  const broken = join(folder, "broken.cjs");
  writeFileSync(
    broken,
    `require("node:os").uptime = () => { throw new TypeError("made to fail\\u001b[2J"); };\n`,
  );
  const env = { ...process.env, DRYLINE_HOME: join(folder, "home"), NODE_OPTIONS: `--require ${broken}` };
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtCommand, "now"], {
    encoding: "utf8",
    env,
  });
  expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
  const [, file = ""] = /^dryline: a fault of our own, the report is in (\S+): [^\n]*\n$/.exec(stderr) ?? [];
  expect(stderr).not.toMatch(/\p{Cc}(?!$)/u);
  expect(readFileSync(file, "utf8")).toContain("made to fail");
});

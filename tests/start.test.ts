import { type SpawnSyncReturns, spawn, spawnSync } from "node:child_process";
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, inject, test } from "vitest";

const packageRoot = join(import.meta.dirname, "..");

/** A clone in small: the real build and start scripts, and a program of one file in place of ours. */
let clone: string;

beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), "dryline-start-"));
  mkdirSync(join(clone, "src/workshop"), { recursive: true });
  writeFileSync(join(clone, "src/workshop/plan-worker.ts"), "");
  for (const file of ["package.json", "package-lock.json", "tsconfig.json"]) {
    cpSync(join(packageRoot, file), join(clone, file));
  }
  const scripts = readdirSync(join(packageRoot, "src"), { recursive: true, encoding: "utf8" }).filter(
    (file) => file.endsWith(".mjs"),
  );
  for (const file of scripts) cpSync(join(packageRoot, "src", file), join(clone, "src", file));
  symlinkSync(join(packageRoot, "node_modules"), join(clone, "node_modules"));
  writeProgram('console.log("first", ...process.argv.slice(2)); process.exitCode = 3;');
});

afterEach(() => {
  rmSync(clone, { recursive: true, force: true });
});

test("the program that these tests run is built from the sources as they are", () => {
  expect(inject("buildTrouble")).toBeNull();
});

test("start builds what is missing and runs it with the same words and exit code", () => {
  expect(start(["hang", "12-14"])).toMatchObject({ stdout: "first hang 12-14\n", stderr: "", status: 3 });
});

test("start writes nothing while the build is fresh, though every source has a new time", () => {
  start([]);
  const before = listBuilt();
  expect(before.map(({ name }) => name)).toContain("dryline.cjs");
  utimesSync(join(clone, "src/main.ts"), new Date(), new Date());
  expect(start(["again"]).stdout).toBe("first again\n");
  expect(listBuilt()).toEqual(before);
});

test("start builds anew after a source, or a file it imports, has changed", () => {
  start([]);
  writeProgram('import { word } from "./time/word.ts";\nconsole.log(word);');
  mkdirSync(join(clone, "src/time"));
  writeFileSync(join(clone, "src/time/word.ts"), 'export const word = "second";\n');
  expect(start([])).toMatchObject({ stdout: "second\n", status: 0 });
  writeFileSync(join(clone, "src/time/word.ts"), 'export const word = "third";\n');
  expect(start([])).toMatchObject({ stdout: "third\n", status: 0 });
});

test("start says one sentence and exits 1 when the build is stale and the folder cannot be written", () => {
  start([]);
  writeProgram('console.log("second");');
  chmodSync(join(clone, "dist"), 0o555);
  chmodSync(clone, 0o555);
  const { stdout, stderr, status } = start([], unprivileged());
  // Only so can the clone be removed again.
  chmodSync(clone, 0o755);
  chmodSync(join(clone, "dist"), 0o755);
  expect(stderr).toMatch(
    /^dryline: the built program is missing or out of date, and .* cannot be written: .*\n$/,
  );
  expect({ stdout, status }).toEqual({ stdout: "", status: 1 });
});

test("start says what to do when the packages are not installed", () => {
  rmSync(join(clone, "node_modules"));
  const { stderr, status } = start([]);
  expect(stderr).toBe(`dryline: its packages are not installed: run "npm ci" in ${clone} first.\n`);
  expect(status).toBe(1);
});

test("a signal to start reaches the program itself", async () => {
  // The build runs the program by itself: it must not wait there.
  writeProgram(
    'process.on("SIGTERM", () => { console.log("leaving"); process.exit(143); });\nif (process.env.WAITS) setInterval(() => {}, 1000);\nconsole.log("ready");',
  );
  start([]);
  const running = spawn(process.execPath, [join(clone, "src/start.mjs")], {
    env: { ...process.env, WAITS: "yes" },
  });
  let printed = "";
  running.stdout.on("data", (chunk: Buffer) => {
    printed += chunk.toString();
    if (printed === "ready\n") running.kill("SIGTERM");
  });
  const status = await new Promise((resolve) => running.on("close", resolve));
  expect({ printed, status }).toEqual({ printed: "ready\nleaving\n", status: 143 });
});

test("what is imported dynamically is run when it is reached, and shared", () => {
  mkdirSync(join(clone, "src/time"));
  writeFileSync(join(clone, "src/time/count.ts"), "export const count = { heavy: 0 };\n");
  writeFileSync(
    join(clone, "src/time/heavy.ts"),
    'import { count } from "./count.ts";\ncount.heavy++;\nexport const weight = 7;\n',
  );
  writeProgram(`import { count } from "./time/count.ts";
async function main() {
  const before = count.heavy;
  const { weight } = await import("./time/heavy.ts");
  console.log(before, count.heavy, weight);
}
main();`);
  expect(start([])).toMatchObject({ stdout: "0 1 7\n", stderr: "", status: 0 });
  expect(listBuilt().filter(({ name }) => name.includes("heavy"))).toEqual([]);
});

test("what is imported dynamically and leads to a library is a bundle apart, loaded when it is reached", () => {
  mkdirSync(join(clone, "src/process"));
  writeFileSync(
    join(clone, "src/process/heavy.ts"),
    'import { stringify } from "yaml";\nexport const text = stringify({ coat: "–" });\n',
  );
  writeProgram(`async function main() {
  if (process.argv[2] !== "heavy") return console.log("light");
  const { text } = await import("./process/heavy.ts");
  console.log(text);
}
main();`);
  expect(start([])).toMatchObject({ stdout: "light\n", stderr: "", status: 0 });
  expect(start(["heavy"])).toMatchObject({ stdout: "coat: –\n\n", stderr: "", status: 0 });
  const [apart = "", ...others] = listBuilt().flatMap(({ name }) =>
    /^heavy-.*\.cjs$/.test(name) ? [name] : [],
  );
  expect(others).toEqual([]);
  rmSync(join(clone, "dist", apart));
  expect(start([])).toMatchObject({ stdout: "light\n", stderr: "", status: 0 });
  expect(start(["heavy"]).status).not.toBe(0);
});

test("a pattern of letters beyond ASCII finds them in the program as it is built", () => {
  writeProgram('console.log("3–5".replace(/[–—]/g, " to "), "鮎 😀".replace(/[😀]$/u, "smiles"));');
  expect(start([])).toMatchObject({ stdout: "3 to 5 鮎 smiles\n", stderr: "", status: 0 });
});

function writeProgram(source: string): void {
  writeFileSync(join(clone, "src/main.ts"), `${source}\n`);
}

function start(words: string[], user: { uid?: number; gid?: number } = {}): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [join(clone, "src/start.mjs"), ...words], { encoding: "utf8", ...user });
}

/** Permissions do not bind root: as root, become a user whom they do. */
function unprivileged(): { uid?: number; gid?: number } {
  return process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
}

function listBuilt(): { name: string; written: number }[] {
  return readdirSync(join(clone, "dist"))
    .toSorted()
    .map((name) => ({ name, written: statSync(join(clone, "dist", name)).mtimeMs }));
}

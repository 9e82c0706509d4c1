/** What V8 compiled of the program when it was built is taken up by its starts, and never needed. */
import { spawnSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { builtFolder, packageRoot } from "../src/fresh.mjs";
import { compiledCodeOf } from "../src/load-program.mjs";
import { programNames } from "../src/programs.mjs";

/** The package as it is installed, with a dist/ of its own. */
let installed: string;

beforeEach(() => {
  installed = mkdtempSync(join(tmpdir(), "dryline-compiled-"));
  mkdirSync(join(installed, "dist"));
  // Written, not copied: in a read-only clone a copy could not be changed.
  for (const name of readdirSync(builtFolder).filter((each) => !each.endsWith(".map"))) {
    writeFileSync(join(installed, "dist", name), readFileSync(join(builtFolder, name)));
  }
  for (const part of ["package.json", "processes", "node_modules"]) {
    symlinkSync(join(packageRoot, part), join(installed, part));
  }
});

afterEach(() => {
  rmSync(installed, { recursive: true, force: true });
});

/** The bundles of the last build's programs, by the stamp it leaves, in the order of programs.mjs. */
function programs(): string[] {
  const [, ...names] = readFileSync(join(installed, "dist/sources.sha256"), "utf8").trim().split("  ");
  return names.map((name) => join(installed, "dist", name));
}

function runRack() {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(installed, "dist/dryline.cjs"), "rack"],
    {
      encoding: "utf8",
      env: { ...process.env, DRYLINE_HOME: join(installed, "home") },
    },
  );
  return { status, stdout, stderr };
}

/** Whether V8 refused the compiled code; undefined: there was none. Asked of a Node with the flags it has by itself. */
function isRefused(program: string): string {
  const loader = pathToFileURL(join(packageRoot, "src/load-program.mjs")).href;
  const ask = `import { loadProgram } from ${JSON.stringify(loader)};
    console.log(loadProgram(${JSON.stringify(program)}).script.cachedDataRejected);`;
  const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", ask], {
    encoding: "utf8",
  });
  return (stdout + stderr).trim();
}

test("V8 takes up what it compiled when the program was built", () => {
  expect(programs().map(isRefused)).toEqual(programNames.map(() => "false"));
});

test("without compiled code, or with some that is damaged or of another V8, the program does the same", () => {
  const whole = runRack();
  expect(whole).toMatchObject({ status: 0, stderr: "" });
  const program = programs()[programNames.indexOf("commands")] ?? "";
  const file = compiledCodeOf(program);
  const bytes = readFileSync(file);
  // V8 writes a number of its own version first: the next V8 has another.
  const other = Buffer.concat([Buffer.alloc(8, 7), bytes.subarray(8)]);
  for (const damaged of [other, bytes.subarray(0, 100), Buffer.alloc(0), Buffer.from("not code")]) {
    writeFileSync(file, damaged);
    expect(runRack()).toEqual(whole);
    expect(isRefused(program)).toBe("true");
  }
  rmSync(file);
  expect(runRack()).toEqual(whole);
  expect(isRefused(program)).toBe("undefined");
});

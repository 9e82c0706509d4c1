/**
 * Runs the programs as on any evening and keeps what V8 compiled of them, for the next starts to take up. The build runs
 * this file as a process of its own, as `node warm-up.mjs NOW COMMANDS DASHBOARD`, the bundles of the programs, with
 * DRYLINE_HOME a scratch folder and no terminal.
 */
import { spawnSync } from "node:child_process";
import { renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { PassThrough } from "node:stream";
import { compiledCodeOf, loadProgram } from "./load-program.mjs";

const bundles = process.argv.slice(2);
const [now = "", commands = "", dashboard = ""] = bundles;
const folder = dirname(now);
const require = createRequire(now);
const programs = new Map(bundles.map((bundle) => [bundle, loadProgram(bundle)]));

/** What a shop in mid-rotation is made by, in processes of their own. */
const before = [
  ["hours", "daily 0-24"],
  ["hours", "tomorrow 18-22"],
  ["tag", "carved walker", "--count", "3"],
  ["tag", "turned popper"],
  ["tag", "carved walker", "--hung", "seal", "--since", "90m ago"],
  ["tag", "carved walker", "--hung", "white base", "--since", "5h ago"],
  ["tag", "repainted veteran", "--hung", "seal", "--since", "26h ago"],
  ["take", "6", "bend the hangers"],
  ["hang", "6", "bend the hangers"],
  ["ready", "spray corner", "load white", "--ticked", "airbrush mist"],
  ["take", "6", "base colours"],
  ["hang", "6", "base colours"],
  ["touch", "6", "dry"],
  ["putaway", "spray corner"],
  ["ready", "spray corner", "load red"],
];

/** Two days of a thermometer, from before those pieces hung. */
const readings = Array.from({ length: 49 }, (_, hour) => {
  const at = new Date(Date.now() - (48 - hour) * 3_600_000);
  return `{"time": "${at.toISOString()}", "celsius": ${18 + Math.sin(hour)}, "humidity": 50}`;
});

/** What is run here. A function that none of these needs is compiled when it is reached. */
const everyday = [
  () => run(now, "now"),
  () => run(commands, "week"),
  () => run(commands, "take", "4", "tie the tail"),
  () => run(commands, "hang", "4", "tie the tail"),
  () => {
    runAside(["air", "-"], readings.join("\n"));
    run(now, "now");
  },
  () => run(commands, "rack"),
  runDashboard,
  () => {
    runAside(["plan"]);
    run(now, "now");
  },
  () => {
    for (const [bundle, { script }] of programs) keepCompiledCode(bundle, script);
  },
];

/**
 * @param {readonly string[]} words
 * @param {string} input what comes by standard input
 */
function runAside(words, input = "") {
  spawnSync(process.execPath, [join(folder, "dryline.cjs"), ...words], { input });
}

/**
 * @param {string} program its bundle
 * @param {string[]} words
 */
function run(program, ...words) {
  process.argv = [process.execPath, join(folder, "dryline.cjs"), ...words];
  programs.get(program)?.run(require);
}

/** Opens the dashboard on a made-up terminal, until its first whole frame. */
function runDashboard() {
  const stdin = Object.assign(new PassThrough(), { isTTY: true, setRawMode() {}, ref() {}, unref() {} });
  const stdout = Object.assign(new PassThrough(), {
    isTTY: true,
    columns: 80,
    rows: 24,
    write(/** @type {string} */ text) {
      if (text.includes("q quit")) process.emit("SIGTERM");
      return true;
    },
  });
  Object.defineProperty(process, "stdin", { value: stdin });
  Object.defineProperty(process, "stdout", { value: stdout });
  run(dashboard);
}

/**
 * Put in place whole, by a rename: a program that starts meanwhile finds all of it or none.
 *
 * @param {string} bundle
 * @param {import("node:vm").Script} script
 */
function keepCompiledCode(bundle, script) {
  const unfinished = `${compiledCodeOf(bundle)}.${process.pid}`;
  writeFileSync(unfinished, script.createCachedData());
  renameSync(unfinished, compiledCodeOf(bundle));
}

// The program ends itself; here something else follows.
process.exit = /** @type {typeof process.exit} */ (() => {});
/** As it was meant to: done, or the dashboard ended by SIGTERM. */
const wentWell = [0, 143];

// Emitted each time that nothing is left to do.
process.on("beforeExit", (exitCode) => {
  // What a failed start compiles, as where SQLite was not built for this Node, is no use to others.
  if (!wentWell.includes(exitCode)) return;
  everyday.shift()?.();
  // Promises alone do not keep a process alive, nor let it be told again.
  if (everyday.length > 0) setImmediate(() => {});
});
for (const words of before) runAside(words);

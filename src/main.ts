/**
 * The entry of the command `dryline`: reads the words typed and hands over, to the commands or to the dashboard.
 * It must stay small, since every command pays for what is loaded here.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runCommandLine } from "./commands/command-line.ts";
import { machineContext } from "./commands/machine-context.ts";
import { findPackageRoot } from "./workshop/package-root.ts";
import type { Workshop } from "./workshop/workshop.ts";

const { argv, env, stdout } = globalThis.process;
const typed = argv.slice(2);

function readVersion(): string {
  const manifest: { version: string } = JSON.parse(
    readFileSync(join(findPackageRoot(), "package.json"), "utf8"),
  );
  return manifest.version;
}

/** Whoever read what we print has gone, as `head` does: no fault of anybody's. */
function endQuietly(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
  globalThis.process.exit();
}

async function run(): Promise<number> {
  if (typed[0] === "--version") {
    stdout.write(`${readVersion()}\n`);
    return 0;
  }
  const context = machineContext(readVersion, openDashboard);
  if (typed.length > 0 || env.TERM === "dumb" || !context.isTerminal) return runCommandLine(typed, context);
  const { openWorkshop } = await import("./workshop/open-workshop.ts");
  const workshop = await openWorkshop();
  try {
    return await openDashboard(workshop);
  } finally {
    workshop.close();
  }
}

async function openDashboard(workshop: Workshop): Promise<number> {
  const { runDashboard } = await import("./dashboard/run-dashboard.ts");
  return runDashboard({ workshop, stdin: globalThis.process.stdin, stdout, env });
}

async function fail(fault: unknown): Promise<void> {
  const { err } = machineContext(readVersion, openDashboard);
  const { sayTrouble } = await import("./commands/say-trouble.ts");
  const trouble = sayTrouble(fault);
  if (trouble !== null) {
    err(`${trouble}.\n`);
    globalThis.process.exitCode = 2;
    return;
  }
  const { reportFault } = await import("./commands/fault-report.ts");
  err(`${reportFault(fault, typed, readVersion())}\n`);
  globalThis.process.exitCode = 1;
}

stdout.on("error", endQuietly);
run().then((exitCode) => {
  globalThis.process.exitCode = exitCode;
}, fail);

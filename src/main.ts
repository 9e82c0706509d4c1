/**
 * The entry of the command `dryline`: reads the words typed and hands over, to the commands or to the dashboard.
 * It must stay small, since every command pays for what is loaded here.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { machineContext } from "./commands/machine-context.ts";
import { isReaderGone, StandardOutput } from "./commands/standard-output.ts";
import { findPackageRoot } from "./workshop/package-root.ts";
import type { Workshop } from "./workshop/workshop.ts";

const { argv, env } = globalThis.process;
const typed = argv.slice(2);
const out = new StandardOutput(1, () => globalThis.process.stdout.on("error", endQuietly));
const err = new StandardOutput(2, () => globalThis.process.stderr.on("error", () => {}));
const context = machineContext({ out, err, readVersion, openDashboard });

function readVersion(): string {
  const manifest: { version: string } = JSON.parse(
    readFileSync(join(findPackageRoot(), "package.json"), "utf8"),
  );
  return manifest.version;
}

function endQuietly(trouble: Error): void {
  if (!isReaderGone(trouble)) throw trouble;
  globalThis.process.exit();
}

async function run(): Promise<number> {
  if (typed[0] === "--version") {
    context.out(`${readVersion()}\n`);
    return 0;
  }
  if (typed.length > 0 || env.TERM === "dumb" || !context.isTerminal) {
    const { runCommandLine } = await import("./commands/command-line.ts");
    return runCommandLine(typed, context);
  }
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
  const { stdin, stdout } = globalThis.process;
  return runDashboard({ workshop, stdin, stdout, env });
}

/** Tells what went wrong; gives the exit code. */
async function fail(fault: unknown): Promise<number> {
  // No fault of anybody's.
  if (isReaderGone(fault)) return 0;
  const { sayTrouble } = await import("./commands/say-trouble.ts");
  const trouble = sayTrouble(fault);
  if (trouble !== null) {
    context.err(`${trouble}.\n`);
    return 2;
  }
  const { reportFault } = await import("./commands/fault-report.ts");
  context.err(`${reportFault(fault, typed, readVersion())}\n`);
  return 1;
}

run()
  .catch(fail)
  .then((exitCode) => {
    globalThis.process.exitCode = exitCode;
    // Node would first wait for what V8 still compiles beside.
    if (!out.mayWait && !err.mayWait) globalThis.process.exit();
  });

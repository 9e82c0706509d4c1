import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { build } from "esbuild";
import { packageRoot } from "../../src/fresh.mjs";
import { driver } from "../../src/journal/driver.mjs";

/**
 * Makes a program of a TypeScript file beside this one, to be run as a process of its own.
 *
 * @param folder where the program is written; the clone itself may be read-only
 * @returns its path
 */
export async function bundleProgram(folder: string, name: string): Promise<string> {
  const outfile = join(folder, `${name}.cjs`);
  await build({
    entryPoints: [join(import.meta.dirname, `${name}.ts`)],
    outfile,
    bundle: true,
    platform: "node",
    format: "cjs",
    // All else goes into the one file: it is started hundreds of times, and many small files are slow to load.
    external: [driver],
    alias: { "better-sqlite3": driver },
    define: { "import.meta.dirname": "__dirname", "import.meta.filename": "__filename" },
    logLevel: "error",
  });
  return outfile;
}

/** A running program, its output by lines, and the promise of its end. */
export interface Running {
  readonly child: ChildProcess;
  readonly lines: string[];
  /** Resolves once so many lines have come, or the program has ended. */
  readonly hasSaid: (count: number) => Promise<void>;
  readonly ended: Promise<{ readonly code: number | null; readonly errors: string }>;
}

/** Starts a program made by `bundleProgram`. Its packages are found although it lies elsewhere. */
export function startProgram(program: string, ...args: readonly string[]): Running {
  const env = { ...process.env, NODE_PATH: join(packageRoot, "node_modules") };
  const child = spawn(process.execPath, [program, ...args], { env, stdio: ["ignore", "pipe", "pipe"] });
  const lines: string[] = [];
  let unfinished = "";
  let errors = "";
  let isOver = false;
  const waiting = new Set<{ count: number; resolve: () => void }>();
  const resolveWaiting = () => {
    for (const one of waiting) if (isOver || lines.length >= one.count) one.resolve();
  };
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    const parts = (unfinished + text).split("\n");
    unfinished = parts.pop() ?? "";
    lines.push(...parts);
    resolveWaiting();
  });
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    errors += text;
  });
  const ended = new Promise<{ code: number | null; errors: string }>((resolve) => {
    child.on("close", (code) => {
      isOver = true;
      resolveWaiting();
      resolve({ code, errors });
    });
  });
  const hasSaid = (count: number) =>
    new Promise<void>((resolve) => {
      waiting.add({ count, resolve });
      resolveWaiting();
    });
  return { child, lines, hasSaid, ended };
}

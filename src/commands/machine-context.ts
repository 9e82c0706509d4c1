import type { CommandContext } from "./bench.ts";
import { mayBeTerminal } from "./may-be-terminal.mjs";
import { isReaderGone, type StandardOutput } from "./standard-output.ts";

/** To the beginning of the line, and what stood there erased (ECMA-48, CR and EL). */
const TO_LINE_START = "\r\u001b[K";

/** What the context is made of. */
interface Machine {
  readonly out: StandardOutput;
  readonly err: StandardOutput;
  /** Only asked by help. */
  readonly readVersion: () => string;
  readonly openDashboard: CommandContext["openDashboard"];
}

/**
 * The world of a command as this machine has it: its own streams, journal and terminal. Node's stream objects are touched
 * when they are needed: making that of stdin alone costs an eighth of a cold start.
 */
export function machineContext({ out, err, readVersion, openDashboard }: Machine): CommandContext {
  return {
    openWorkshop: async () => (await import("../workshop/open-workshop.ts")).openWorkshop(),
    get version() {
      return readVersion();
    },
    out: (text) => out.write(text),
    err: (text) => {
      try {
        err.write(text);
      } catch (trouble) {
        // Nobody is listening any more; then there is nobody to tell.
        if (!isReaderGone(trouble)) throw trouble;
      }
    },
    get isTerminal() {
      if (!mayBeTerminal(0) || !mayBeTerminal(1)) return false;
      const { stdin, stdout } = globalThis.process;
      return stdout.isTTY === true && stdin.isTTY === true;
    },
    get thinking() {
      const { env, stderr } = globalThis.process;
      if (!mayBeTerminal(2) || env.TERM === "dumb" || stderr.isTTY !== true) return undefined;
      return (line: string | null) =>
        err.write(`${TO_LINE_START}${line?.slice(0, (stderr.columns || 80) - 1) ?? ""}`);
    },
    get columns() {
      if (!mayBeTerminal(1)) return null;
      const { stdout } = globalThis.process;
      return stdout.isTTY === true ? stdout.columns : null;
    },
    openDashboard,
    input: () => globalThis.process.stdin.setEncoding("utf8"),
    ask,
  };
}

/** Puts one question; the end of the input answers nothing. */
async function ask(question: string): Promise<string> {
  const { createInterface } = await import("node:readline");
  const { stdin, stdout } = globalThis.process;
  const lines = createInterface({ input: stdin, output: stdout });
  return new Promise((resolve) => {
    lines.once("close", () => resolve(""));
    lines.question(question, (answer) => {
      resolve(answer);
      lines.close();
    });
  });
}

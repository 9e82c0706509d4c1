import type { CommandContext } from "./bench.ts";

/**
 * The world of a command as this machine has it: its own streams, journal and terminal. Streams are touched when they
 * are needed: making stdin alone costs an eighth of a cold start.
 *
 * @param readVersion only asked by help
 */
export function machineContext(
  readVersion: () => string,
  openDashboard: CommandContext["openDashboard"],
): CommandContext {
  return {
    openWorkshop: async () => (await import("../workshop/open-workshop.ts")).openWorkshop(),
    get version() {
      return readVersion();
    },
    out: (text) => {
      globalThis.process.stdout.write(text);
    },
    err: (text) => {
      const { stderr } = globalThis.process;
      // Nobody may be listening any more; then there is nobody to tell.
      if (stderr.listenerCount("error") === 0) stderr.on("error", () => {});
      stderr.write(text);
    },
    get isTerminal() {
      const { stdin, stdout } = globalThis.process;
      return stdout.isTTY === true && stdin.isTTY === true;
    },
    get columns() {
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

import type { CommandContext } from "./bench.ts";

/** The world of a command as this machine has it: its own streams, clock, journal and terminal. */
export function machineContext(
  version: string,
  openDashboard: CommandContext["openDashboard"],
): CommandContext {
  const { stdin, stdout, stderr } = globalThis.process;
  return {
    openWorkshop: async () => (await import("../workshop/open-workshop.ts")).openWorkshop(),
    version,
    out: (text) => {
      stdout.write(text);
    },
    err: (text) => {
      stderr.write(text);
    },
    isTerminal: stdin.isTTY === true && stdout.isTTY === true,
    columns: stdout.isTTY === true ? stdout.columns : null,
    openDashboard,
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

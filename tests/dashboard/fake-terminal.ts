import { EventEmitter } from "node:events";
import { PassThrough } from "node:stream";
import { Terminal } from "@xterm/headless";
import { terminalLines } from "../fixtures/terminal-lines.ts";

/** A terminal in memory: what a program writes is shown, what a test types is read. */
export class FakeTerminal {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly terminal: Terminal;
  /** Everything written, in its order. */
  written = "";
  raw = false;

  constructor(columns = 80, rows = 24) {
    this.terminal = new Terminal({ cols: columns, rows, allowProposedApi: true });
    const input = Object.assign(new PassThrough(), {
      isTTY: true,
      setRawMode: (on: boolean) => {
        this.raw = on;
      },
      ref: () => {},
      unref: () => {},
    });
    const output = Object.assign(new EventEmitter(), {
      isTTY: true,
      columns,
      rows,
      write: (text: string) => {
        this.written += text;
        this.terminal.write(text);
        return true;
      },
    });
    this.stdin = input as unknown as NodeJS.ReadStream;
    this.stdout = output as unknown as NodeJS.WriteStream;
  }

  type(keys: string): void {
    (this.stdin as unknown as PassThrough).write(keys);
  }

  resize(columns: number, rows: number): void {
    this.terminal.resize(columns, rows);
    Object.assign(this.stdout, { columns, rows });
    this.stdout.emit("resize");
  }

  /** The lines on the screen, once all that was written is shown. */
  lines(): Promise<string[]> {
    return terminalLines(this.terminal);
  }

  /** The screen once it holds this text; waits a few turns of the event loop and no time of the clock. */
  async until(text: string): Promise<string[]> {
    for (let turn = 0; turn < 2000; turn++) {
      const lines = await this.lines();
      if (lines.join("\n").includes(text)) return lines;
      await new Promise((resolve) => setImmediate(resolve));
    }
    throw new Error(`the screen never showed "${text}":\n${(await this.lines()).join("\n")}`);
  }
}

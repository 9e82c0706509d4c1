import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Terminal } from "@xterm/headless";
import { type IPty, spawn } from "node-pty";
import { builtCommand } from "../../src/fresh.mjs";
import { terminalLines } from "../fixtures/terminal-lines.ts";

/** A CommonJS package that hides its names from an import by plain Node, which runs the benchmarks. */
const xterm = createRequire(import.meta.url)("@xterm/headless") as typeof import("@xterm/headless");

/** A real wait may last so long before a test gives up, in milliseconds. */
const PATIENCE = 15_000;
const LOOK_EVERY = 15;

/** A maker's place of their own: a home in a scratch folder, a zone, and the built program. */
export class MakersPlace {
  readonly folder = mkdtempSync(join(tmpdir(), "dryline-terminal-"));
  readonly #open: ProgramOnTerminal[] = [];

  env(changes: Record<string, string> = {}): Record<string, string> {
    return {
      PATH: process.env.PATH ?? "",
      HOME: this.folder,
      DRYLINE_HOME: join(this.folder, "home"),
      TZ: "Europe/Dublin",
      TERM: "xterm-256color",
      ...changes,
    };
  }

  /** Runs one command as a script would, without a terminal. */
  command(...words: string[]): { readonly text: string; readonly status: number | null } {
    const { stdout, stderr, status } = spawnSync(process.execPath, [builtCommand, ...words], {
      encoding: "utf8",
      env: this.env(),
    });
    return { text: stdout + stderr, status };
  }

  /** The same, for a command that must be done. */
  done(...words: string[]): string {
    const { text, status } = this.command(...words);
    if (status !== 0) throw new Error(`dryline ${words.join(" ")} exited with ${status}: ${text}`);
    return text;
  }

  /** Opens the dashboard (or other words) on a terminal. */
  open(
    said: {
      readonly env?: Record<string, string>;
      readonly columns?: number;
      readonly rows?: number;
      readonly words?: readonly string[];
    } = {},
  ): ProgramOnTerminal {
    return this.run(process.execPath, [builtCommand, ...(said.words ?? [])], said);
  }

  /** Any program on a terminal, a shell for one. */
  run(
    file: string,
    args: readonly string[],
    {
      env = {},
      columns = 80,
      rows = 24,
    }: { readonly env?: Record<string, string>; readonly columns?: number; readonly rows?: number } = {},
  ): ProgramOnTerminal {
    const program = new ProgramOnTerminal(
      spawn(file, [...args], {
        cols: columns,
        rows,
        cwd: this.folder,
        env: this.env(env),
        // It would overwrite TERM.
        name: this.env(env).TERM ?? "",
      }),
      columns,
      rows,
    );
    this.#open.push(program);
    return program;
  }

  /** Ends what still runs and takes the folder away. */
  async clear(): Promise<void> {
    for (const program of this.#open) await program.end();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** A program on a pseudo-terminal, and the screen a person would see. */
export class ProgramOnTerminal {
  readonly pty: IPty;
  readonly terminal: Terminal;
  readonly exited: Promise<number>;
  /** Every byte written, as text. */
  written = "";
  #running = true;

  constructor(pty: IPty, columns: number, rows: number) {
    this.pty = pty;
    this.terminal = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
    pty.onData((text) => {
      this.written += text;
      this.terminal.write(text);
    });
    this.exited = new Promise((resolve) => {
      pty.onExit(({ exitCode }) => {
        this.#running = false;
        resolve(exitCode);
      });
    });
  }

  type(keys: string): void {
    this.pty.write(keys);
  }

  resize(columns: number, rows: number): void {
    this.terminal.resize(columns, rows);
    this.pty.resize(columns, rows);
  }

  lines(): Promise<string[]> {
    return terminalLines(this.terminal);
  }

  async screen(): Promise<string> {
    return (await this.lines()).join("\n");
  }

  /** Waits until the screen shows this; gives the screen. */
  async until(wanted: string | RegExp | ((screen: string) => boolean)): Promise<string> {
    const shows = (screen: string) =>
      typeof wanted === "string"
        ? screen.includes(wanted)
        : wanted instanceof RegExp
          ? wanted.test(screen)
          : wanted(screen);
    for (const begun = performance.now(); performance.now() - begun < PATIENCE; ) {
      const screen = await this.screen();
      if (shows(screen)) return screen;
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY));
    }
    throw new Error(`the screen never showed ${String(wanted)}:\n${await this.screen()}`);
  }

  /** Whether the terminal is as a program should leave it: normal screen, cursor shown. */
  async isGivenBack(): Promise<{ readonly screen: "normal" | "alternate"; readonly cursor: boolean }> {
    await this.lines();
    const cursor = this.written.lastIndexOf("\u001b[?25h") >= this.written.lastIndexOf("\u001b[?25l");
    return { screen: this.terminal.buffer.active.type, cursor };
  }

  async end(): Promise<void> {
    if (!this.#running) return;
    this.pty.kill("SIGKILL");
    await this.exited;
  }
}

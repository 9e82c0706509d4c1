import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { builtCommand } from "../../src/fresh.mjs";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-ended-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test.each(["SIGINT", "SIGTERM", "SIGHUP"] as const)(
  "a demo that %s ends while its shop is made takes the folder along",
  { timeout: 30_000 },
  async (signal) => {
    const demo = spawn(process.execPath, [builtCommand, "demo"], {
      env: { ...process.env, TMPDIR: folder },
      stdio: "ignore",
    });
    const ended = once(demo, "exit");
    const made = () => readdirSync(folder, { recursive: true, encoding: "utf8" });
    while (!made().some((file) => file.endsWith("journal.sqlite")))
      await new Promise((resolve) => setTimeout(resolve, 20));
    demo.kill(signal);
    expect(await ended).toEqual([null, signal]);
    expect(readdirSync(folder)).toEqual([]);
  },
);

import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace } from "./pty.ts";

let place: MakersPlace;

beforeEach(() => {
  place = new MakersPlace();
});

afterEach(() => place.clear());

const opened = "a tags a new piece";

test("on a terminal it opens the dashboard; q leaves everything as it was and exits 0", async () => {
  const program = place.open();
  await program.until(opened);
  expect(program.terminal.buffer.active.type).toBe("alternate");
  program.type("q");
  expect(await program.exited).toBe(0);
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
  expect((await program.screen()).trim()).toBe("");
});

test.each([
  ["SIGTERM", 143],
  ["SIGHUP", 129],
  ["SIGINT", 130],
] as const)("%s gives the terminal back and exits %i", async (signal, code) => {
  const program = place.open();
  await program.until(opened);
  program.pty.kill(signal);
  expect(await program.exited).toBe(code);
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
});

test("Ctrl-C gives the terminal back and exits 130", async () => {
  const program = place.open();
  await program.until(opened);
  program.type("\u0003");
  expect(await program.exited).toBe(130);
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
});

test("a crash gives the terminal back, is told in one line where it can be read, and exits 1", async () => {
  const program = place.open();
  await program.until(opened);
  breakJournal(join(place.env().DRYLINE_HOME ?? "", "journal.sqlite"));
  expect(await program.exited).toBe(1);
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
  const told = (await program.lines()).filter((line) => line !== "");
  expect(told.join(" ")).toMatch(/dryline/);
  expect(told.join(" ")).not.toMatch(/ at .*\(/);
});

test("Ctrl-Z stops it with the shell's terminal in order, and fg brings the dashboard back", async () => {
  const shell = place.run("bash", ["--norc", "--noprofile", "-i"], { env: { PS1: "ready> " } });
  await shell.until("ready>");
  shell.type(`${process.execPath} ${builtProgram()}\r`);
  await shell.until(opened);
  shell.type("\u001a");
  await shell.until("Stopped");
  expect(await shell.isGivenBack()).toEqual({ screen: "normal", cursor: true });
  // The shell's own line editing works: the terminal is not raw any more.
  shell.type("echo at-the-$((6*7))\r");
  await shell.until("at-the-42");
  shell.type("fg\r");
  await shell.until(opened);
  expect(shell.terminal.buffer.active.type).toBe("alternate");
  shell.type("?");
  await shell.until("tag a new piece");
  shell.type("\u001b");
  await shell.until(opened);
  shell.type("q");
  await shell.until((screen) => screen.trimEnd().endsWith("ready>"));
  shell.type("echo left-with-$?\r");
  await shell.until("left-with-0");
});

test("a SIGTSTP from outside gives the terminal back too, and SIGCONT brings the dashboard back", async () => {
  const program = place.open();
  await program.until(opened);
  program.pty.kill("SIGTSTP");
  await program.until((screen) => screen.trim() === "");
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
  // A SIGCONT that overtakes the stop itself is lost, whoever sends it: it is sent until it is heard.
  const sendingOn = setInterval(() => program.pty.kill("SIGCONT"), 200);
  await program.until(opened).finally(() => clearInterval(sendingOn));
  program.type("q");
  expect(await program.exited).toBe(0);
});

/** Takes the tables away under a program that has the journal open. */
function breakJournal(file: string): void {
  const database = new Database(file);
  database.pragma("foreign_keys = OFF");
  const names = database
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[];
  for (const name of names) database.exec(`DROP TABLE "${name}"`);
  database.close();
}

function builtProgram(): string {
  return join(import.meta.dirname, "../../dist/dryline.cjs");
}

import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace } from "./pty.ts";

let place: MakersPlace;

beforeEach(() => {
  place = new MakersPlace();
});

afterEach(() => place.clear());

const opened = "Enter do it";

test("another size is drawn at once: as many lines, the keys on the last", async () => {
  const program = place.open();
  await program.until(opened);
  program.resize(120, 40);
  await program.until((screen) => (screen.split("\n")[39] ?? "").includes(opened));
  program.resize(60, 16);
  await program.until((screen) => (screen.split("\n")[15] ?? "").includes(opened));
  expect(await program.lines()).toHaveLength(16);
  program.type("q");
  expect(await program.exited).toBe(0);
});

test("what another program writes shows without a key", async () => {
  const program = place.open();
  await program.until(opened);
  place.done("tag", "carved walker", "--name", "from the other room");
  // How soon, tests/workshop/news.test.ts says.
  await program.until("1 from the othe");
  program.type("q");
  await program.exited;
});

test("what is done here is there for the next command", async () => {
  const program = place.open();
  await program.until("a tags a new piece");
  program.type("a");
  await program.until("1  carved walker");
  program.type("1");
  await program.until("Name of the new carved walker");
  program.type("smelt\r");
  await program.until("1 tagged, smelt");
  program.type("q");
  await program.exited;
  expect(place.done("now")).toContain("1 smelt");
});

test("NO_COLOR leaves every style away, and the mark is still seen", async () => {
  place.done("tag", "carved walker");
  const program = place.open({ env: { NO_COLOR: "1" } });
  await program.until(/\n>/);
  program.type("q");
  await program.exited;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: SGR sequences begin with ESC
  expect(program.written).not.toMatch(/\u001b\[[0-9;]*[1-9][0-9;]*m/);
});

test("with colour the same screen has styles: the check above can fail", async () => {
  place.done("tag", "carved walker");
  const program = place.open();
  await program.until(/\n>/);
  program.type("q");
  await program.exited;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: SGR sequences begin with ESC
  expect(program.written).toMatch(/\u001b\[[0-9;]*[1-9][0-9;]*m/);
});

test("a dumb terminal, and none at all, are told what now says", async () => {
  place.done("tag", "carved walker", "--name", "smelt");
  const said = place.done("now");
  expect(said).toContain("1 smelt");
  expect(place.done()).toBe(said);
  const program = place.open({ env: { TERM: "dumb" } });
  expect(await program.exited).toBe(0);
  expect(await program.screen()).toContain("1 smelt");
  expect(program.written).not.toContain("\u001b");
});

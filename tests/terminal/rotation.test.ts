import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace } from "./pty.ts";

const WORDS = ["rotation", "cast foam minnow", "--hours", "Sat 9-13", "--out", "2"];

let place: MakersPlace;

beforeEach(() => {
  place = new MakersPlace();
});

afterEach(() => place.clear());

test("a rotation says in one line what it looks for, and takes the line away before it answers", async () => {
  const program = place.open({ words: WORDS, rows: 200 });
  await program.until(/cast foam minnow: looking for .* \.\.\./);
  expect(await program.exited).toBe(0);
  const screen = await program.screen();
  expect(screen).toMatch(/^cast foam minnow in rotation, Sat 9:00-13:00\n/);
  expect(screen).not.toContain("looking for");
});

test("Ctrl-C leaves a rotation at once, with no answer and the terminal as it was", async () => {
  const program = place.open({ words: WORDS });
  await program.until("looking for");
  program.type("\u0003");
  await program.exited;
  expect(await program.screen()).not.toContain("in rotation");
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
  expect(place.done("rack")).not.toContain("looking for");
});

test("nothing of it goes to a pipe", () => {
  const { text, status } = place.command(...WORDS);
  expect({ status, looked: text.includes("looking for") }).toEqual({ status: 0, looked: false });
});

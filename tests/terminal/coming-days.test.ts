import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace } from "./pty.ts";

let place: MakersPlace;

beforeEach(() => {
  place = new MakersPlace();
  place.done("hours", "daily 8-22");
  place.done("tag", "carved walker", "--name", "smelt", "--count", "2");
});

afterEach(() => place.clear());

test.each([
  [80, 24],
  [140, 40],
])("the coming days open, scroll and close at %i x %i", async (columns, rows) => {
  const program = place.open({ columns, rows });
  await program.until("Enter do it");
  program.type("d");
  await program.until("The coming days");
  await program.until("saw the blank");
  const first = await program.lines();
  expect(first).toHaveLength(rows);
  for (const line of first) expect(line.length).toBeLessThanOrEqual(columns);
  program.type("\u001b[6~");
  program.type("\u001b[6~");
  await program.until((screen) => !screen.includes("7 days:"));
  program.type("\u001b");
  await program.until((screen) => !screen.includes("The coming days"));
  program.type("q");
  expect(await program.exited).toBe(0);
});

test("a piece tagged in another terminal comes into the days that lie open", async () => {
  const program = place.open({ columns: 120, rows: 50 });
  await program.until("Enter do it");
  program.type("d");
  await program.until("The coming days");
  place.done("tag", "carved walker", "--name", "from the other room", "--due", "tomorrow");
  await program.until("3 from the other room");
  expect(await program.screen()).toContain("The coming days");
  program.type("d");
  await program.until((screen) => !screen.includes("The coming days"));
});

import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace, type ProgramOnTerminal } from "./pty.ts";

let place: MakersPlace;

beforeEach(() => {
  place = new MakersPlace();
});

afterEach(() => place.clear());

test("a day at the bench, from an empty folder to the week", { timeout: 120_000 }, async () => {
  place.done("hours", "daily 0:00-23:59");
  const first = place.open({ columns: 120, rows: 40 });
  await first.until("a tags a new piece");

  // Three lures are tagged by keys.
  for (const [index, name] of ["smelt", "dace", "perch"].entries()) {
    first.type("a");
    await first.until("1  carved walker");
    first.type("4");
    await first.until("Name of the new turned popper");
    first.type(`${name}\r`);
    await first.until(`${index + 1} tagged, ${name}`);
  }

  // A fourth was sealed yesterday: its window of 24 h has shut, and a scuff is offered before the next coat.
  place.done("tag", "repainted veteran", "--name", "shut", "--hung", "seal", "--since", "26h ago");
  expect(await first.until(/ 4 shut .* shut /)).toContain("SCUFF, THEN WHITE BASE");

  // A fifth gets its seal here: the caution is read and ticked, the coat taken and hung.
  place.done("tag", "repainted veteran", "--name", "fresh", "--hung", "sand smooth", "--since", "2h ago");
  await first.until(/ 5 fresh /);
  first.type("5t");
  if (/Read this first/.test(await first.until(/Read this first|5 seal in hand/))) first.type("c");
  await first.until("5 seal in hand");
  first.type("5h");

  // Its countdown is read, and in the midst of it the program is killed.
  const countdown = openingOf(await first.until(/ 5 fresh .*opens/));
  await first.end();
  const second = place.open({ columns: 120, rows: 40 });
  expect(openingOf(await second.until(/ 5 fresh .*opens/))).toBe(countdown);

  // A mend, undone again by its key; then the week.
  place.done("mend", "5", "level the run", "--minutes", "10", "--then", "seal");
  await second.until((screen) => !/ 5 fresh .*opens/.test(screen));
  second.type("u");
  await second.until("Undo?");
  second.type("y");
  await second.until("Undone");
  expect(openingOf(await second.until(/ 5 fresh .*opens/))).toBe(countdown);
  second.type("w");
  await second.until("tagged 5");
  second.type("\u001b");
  // Escape and q in one chunk would be one key.
  await second.until(/ 5 fresh .*opens/);
  await quit(second);
});

/** The moment the fifth piece opens, as its row tells it. */
function openingOf(screen: string): string {
  return /^ 5 fresh .*opens ([^,\n]+)/m.exec(screen)?.[1]?.trim() ?? "";
}

async function quit(program: ProgramOnTerminal): Promise<void> {
  program.type("q");
  expect(await program.exited).toBe(0);
}
